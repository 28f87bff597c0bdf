import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Json } from '../../src/book/model.ts';
import { partNames } from '../../src/book/model.ts';
import { z } from '../../src/book/zod.ts';
import { bookParts } from '../../src/session/book-parts.ts';
import { chartOf } from '../../src/session/charts/chart.ts';
import { chartsOutline } from '../../src/session/charts/chart-record.ts';
import type { Command } from '../../src/session/commands/index.ts';
import { handoutsOf } from '../../src/session/handouts/handouts.ts';
import { reportOf } from '../../src/session/report/report.ts';
import { Session } from '../../src/session/session.ts';

/*
 * Every part of a book that is registered meets every command that renames or removes what it may name. Names are
 * made-up words that stand nowhere else, so that a record's text tells what it names.
 */

/** Records that fill every field of a part: a new field or part without one fails. Sheet zroster has columns zlean and zgroup, zlog has zday, zload and zwho; ztarget is a named cell. */
const samples: Readonly<Record<string, { readonly key: string; readonly records: readonly Json[] }>> = {
  'charts ': {
    key: 'chart_1',
    records: [
      {
        title: 'A chart',
        kind: 'distribution',
        sheet: 'zroster',
        columns: ['zlean'],
        by: 'zgroup',
        panels: true,
        sem: 'ztarget + MEDIAN(zlean) + MAX(zlog.zload)',
        confidence: 0.9,
        gapDays: 20,
      },
    ],
  },
  'handouts settings': {
    key: 'settings',
    records: [
      {
        sheet: 'zroster',
        parts: ['numbers'],
        numbers: [{ column: 'zlean', error: 'ztarget * 2' }],
        rules: [
          { part: 'finding', when: 'zlean > ztarget + MAX(zlog.zload)', say: 'You: {zlean}, aim {ztarget}.' },
        ],
        retestWeeks: 4,
        tested: 'zlean',
        contact: 'The coach',
      },
      { sheet: 'zlog', tested: 'zday' },
    ],
  },
  'handouts report': {
    key: 'report',
    records: [
      {
        title: 'T',
        authors: 'A',
        methods: 'M',
        trials: [{ title: 'X', sheet: 'zroster', columns: ['zlean', 'zlean_2'], form: '2,1' }],
        groups: [{ sheet: 'zroster', columns: ['zlean'], by: 'zgroup' }],
        charts: ['chart_1'],
        confidence: 0.9,
      },
    ],
  },
  'settings figure': {
    key: 'figure',
    records: [{ columns: { ankle: 'zlean', lift: 'ztarget' } }],
  },
  'settings locale': { key: 'locale', records: [{ decimal: ',', dateOrder: 'dmy' }] },
  'settings doubts': { key: 'doubts', records: [{ testsOlderThan: 90 }] },
  'recipes ': {
    key: 'club',
    records: [
      {
        version: 1,
        title: 'Club file',
        sheet: 'zroster',
        columns: [
          {
            heading: 'H',
            or: ['G'],
            column: 'zlean',
            unit: 'deg',
            factor: 2,
            unitsIn: 'U',
            readAs: { n: '' },
            decimal: '.',
            dateOrder: 'ymd',
            clock: 'm:ss',
            missing: ['-'],
            yes: ['y'],
            no: ['n'],
            optional: true,
          },
        ],
        rowIsSet: true,
        rest: 'match',
        mode: 'update',
        key: ['zlean'],
        ofDiffering: 'leave',
        shape: { to: 'wide', name: 'n', value: 'v', by: ['b'], columns: ['c'] },
        who: { column: 'zgroup', roster: 'zlog', name: 'zwho', also: ['zload'], same: { A: 'B' } },
        missing: ['none'],
        read: {
          encoding: 'utf-8',
          delimiter: ',',
          quote: '"',
          preamble: 0,
          headingLines: 1,
          unitsLine: false,
          footer: 0,
          shortRows: 'hold',
          decimal: '.',
          dateOrder: 'ymd',
        },
      },
    ],
  },
  'provenance ': { key: 'import_1', records: [{ sheet: 'zroster', file: 'a.csv' }] },
  'marks ': {
    key: 'zroster',
    records: [
      {
        columns: [
          {
            column: 'zgroup',
            rules: [
              { when: { is: 'true', formula: 'zlean > zroster.zlean + ztarget' }, tone: 'attend', says: 'S' },
              {
                when: { is: 'between', from: { number: 1 }, to: { formula: 'MAX(zlog.zload)' } },
                tone: 'note',
              },
              { when: { is: 'containing', text: 'x' }, tone: 'plain' },
            ],
            scale: { from: { formula: 'ztarget' }, to: { formula: 'MAX(zlean)' } },
            trend: {
              is: 'log',
              sheet: 'zlog',
              dates: 'zday',
              values: 'zload',
              who: 'zwho',
              by: 'zgroup',
              last: 5,
              together: true,
            },
          },
          {
            column: 'zlean',
            rules: [],
            trend: { is: 'columns', columns: ['zlean', 'zlean_2', 'zgroup'] },
          },
        ],
      },
    ],
  },
  'views ': {
    key: 'zroster',
    records: [
      {
        rows: {
          where: [
            { column: 'zlean', is: 'from to', from: '1', to: '2' },
            { column: 'zgroup', is: 'containing', text: 'x' },
            { column: 'zgroup', is: 'one of', texts: ['x'] },
          ],
          sort: [{ column: 'zlean', descending: true }],
          group: 'zgroup',
        },
        frozen: 1,
        statistic: 'mean',
        summaries: [
          { column: 'zlean', formula: 'MEDIAN(zlean) - ztarget', says: 'S', plain: true },
          { column: 'zgroup', statistic: 'count' },
        ],
      },
    ],
  },
  'pictures ': { key: 'ab', records: [{ width: 4000, height: 3000, jpeg: '/9j/' }] },
  'accepted ': { key: 'a1', records: [{ reason: 'Known', on: '2025-01-01' }] },
};

const named = bookParts.map((part) => `${part.part} ${part.key ?? ''}`);

/** Every key that a record may have, at any depth. */
function keysIn(schema: unknown, found = new Set<string>()): Set<string> {
  if (typeof schema !== 'object' || schema === null) return found;
  for (const [key, value] of Object.entries(schema)) {
    if (key === 'properties') for (const name of Object.keys(value)) found.add(name);
    keysIn(value, found);
  }
  return found;
}

function keysOf(record: Json, found = new Set<string>()): Set<string> {
  if (typeof record !== 'object' || record === null) return found;
  for (const [key, value] of Object.entries(record)) {
    if (!Array.isArray(record)) found.add(key);
    keysOf(value as Json, found);
  }
  return found;
}

/** A book of two sheets with one record in one part. */
function bookWith(part: string, record: Json): Session {
  const session = Session.create();
  const run = (command: Command) => expect(session.execute(command)).toMatchObject({ ok: true });
  run({
    do: 'add-sheet',
    name: 'zroster',
    rows: 3,
    columns: [{ name: 'zgroup', kind: 'text' }, { name: 'zlean' }, { name: 'zlean_2' }],
  });
  run({
    do: 'add-sheet',
    name: 'zlog',
    rows: 3,
    columns: [{ name: 'zday', kind: 'date' }, { name: 'zload' }, { name: 'zwho', kind: 'text' }],
  });
  run({ do: 'add-sheet', name: 'aims', rows: 1, columns: [{ name: 'amount' }] });
  run({ do: 'name-cell', sheet: 'aims', column: 'amount', row: 0, name: 'ztarget' });
  const [of] = part.split(' ') as [(typeof partNames)[number]];
  run({ do: 'set-part', part: of, key: samples[part]!.key, value: record });
  return session;
}

const recordIn = (session: Session, part: string): string => {
  const [of] = part.split(' ') as [(typeof partNames)[number]];
  const kept = session.current.parts[of].get(samples[part]!.key);
  return kept === undefined ? '' : JSON.stringify(kept);
};

/** The commands that change what a part may name: what is called so, and what becomes of it. */
const renames: readonly (readonly [string, Command, string, string])[] = [
  ...['zlean', 'zgroup'].map(
    (name) =>
      [
        `rename column ${name}`,
        { do: 'change-column', sheet: 'zroster', column: name, change: { name: `q${name}` } },
        name,
        `q${name}`,
      ] as const,
  ),
  ...['zday', 'zload', 'zwho'].map(
    (name) =>
      [
        `rename column ${name}`,
        { do: 'change-column', sheet: 'zlog', column: name, change: { name: `q${name}` } },
        name,
        `q${name}`,
      ] as const,
  ),
  [
    'rename sheet',
    { do: 'change-sheet', sheet: 'zroster', change: { name: 'qroster' } },
    'zroster',
    'qroster',
  ],
  ['rename sheet', { do: 'change-sheet', sheet: 'zlog', change: { name: 'qlog' } }, 'zlog', 'qlog'],
  ['rename cell', { do: 'rename-name', name: 'ztarget', to: 'qtarget' }, 'ztarget', 'qtarget'],
];
const removals: readonly (readonly [string, Command, string])[] = [
  ...['zlean', 'zgroup'].map(
    (name) =>
      [`remove column ${name}`, { do: 'remove-column', sheet: 'zroster', column: name }, name] as const,
  ),
  ...['zday', 'zload', 'zwho'].map(
    (name) => [`remove column ${name}`, { do: 'remove-column', sheet: 'zlog', column: name }, name] as const,
  ),
  ['remove sheet zroster', { do: 'remove-sheet', sheet: 'zroster' }, 'zroster'],
  ['remove sheet zlog', { do: 'remove-sheet', sheet: 'zlog' }, 'zlog'],
  ['remove cell', { do: 'remove-name', name: 'ztarget' }, 'ztarget'],
];

/** A name that stands for itself: not as a piece of another, nor behind the mark of what is gone. */
const alone = (name: string): RegExp =>
  new RegExp(`(?<![\\w!.])${name}(?!\\w)|(?<!#REF!\\w*\\.)(?<=\\.)${name}(?!\\w)`, 'g');

/** Parts that keep ids, which no rename changes; their formulas have names all the same. */
const byId = new Set(['marks ', 'views ']);

const cases = named.flatMap((part) =>
  (samples[part]?.records ?? []).map((record, i) => ({ part, record, i })),
);

describe('parts of a book', () => {
  test('each is registered, and has records here that fill every field it may have', () => {
    expect(new Set(bookParts.map(({ part }) => part))).toEqual(new Set(partNames));
    for (const [index, { schema }] of bookParts.entries()) {
      const part = named[index]!;
      const given = samples[part];
      expect(given, `a sample of ${part}`).toBeDefined();
      const have = new Set(given!.records.flatMap((record) => [...keysOf(record)]));
      const may = keysIn(z.toJSONSchema(schema, { unrepresentable: 'any' }));
      expect(
        [...may].filter((key) => !have.has(key)),
        part,
      ).toEqual([]);
      for (const record of given!.records) expect(schema.safeParse(record).success, part).toBe(true);
    }
  });

  describe.each(cases)('$part, record $i', ({ part, record }) => {
    test.each(renames)('follows: %s', (_, command, from, to) => {
      const session = bookWith(part, record);
      const [before, file] = [recordIn(session, part), session.save()];
      expect(session.execute(command)).toMatchObject({ ok: true });
      const after = recordIn(session, part);
      // Where ids stand, only what a formula says is a name.
      const isName = (at: number): boolean =>
        !byId.has(part) || /"formula":"[^"]*$/.test(before.slice(0, at));
      const isId = (at: number): boolean =>
        (part === 'charts ' && /"sheet":"$/.test(before.slice(0, at))) ||
        (part.startsWith('handouts') && /"sheet":"$/.test(before.slice(0, at)));
      const expected = before.replaceAll(
        new RegExp(`(?<!\\w)${from}(?!\\w)`, 'g'),
        (text: string, at: number) => (isName(at) && !isId(at) ? to : text),
      );
      expect(JSON.parse(after)).toEqual(JSON.parse(expected));
      session.undo();
      expect(session.save()).toBe(file);
    });

    test.each(removals)('tells what is gone: %s', (_, command, name) => {
      const session = bookWith(part, record);
      const [before, file] = [recordIn(session, part), session.save()];
      const done = session.execute(command);
      expect(done).toMatchObject({ ok: true });
      const after = recordIn(session, part);
      const goesAlong = byId.has(part) && samples[part]!.key === name;
      if (goesAlong) expect(after).toBe('');
      else if (!alone(name).test(before)) expect(after).toBe(before);
      else {
        // What bears the name no longer stands there on its own, and the user is told which record it was in.
        expect(after).not.toMatch(alone(name));
        if (!byId.has(part)) expect(after).toContain(`#REF!`);
        expect((done as { note?: string }).note ?? '').not.toBe('');
      }
      session.undo();
      expect(session.save()).toBe(file);
      session.redo();
      expect(recordIn(session, part)).toBe(after);
    });
  });
});

describe('the coach’s sample', () => {
  const open = () => Session.open(readFileSync('sample-books/squat-screening.leverbook.json', 'utf8'));
  const shown = (session: Session) => {
    const figure = session.figure('roster', 3);
    return {
      figure: [figure.missing, figure.absent, figure.numbers],
      charts: chartsOutline(session.current).map(({ key }) =>
        session.ask((context) => JSON.stringify(chartOf(context, key).panels)),
      ),
      handouts: session
        .ask((context) => handoutsOf(context))
        .handouts.map(({ numbers, findings, toTry, tested, retest }) => [
          numbers,
          findings,
          toTry,
          tested,
          retest,
        ]),
      notes: session.ask((context) => handoutsOf(context)).notes,
      report: session.ask((context) => {
        const { described, reliability, problems } = reportOf(context, { version: '0', on: '2025-01-01' });
        return [described, reliability, problems];
      }),
      doubts: session.doubts().map(({ about, sentence }) => [about, sentence]),
    };
  };
  const columns = open()
    .outline()
    .sheets.find(({ id }) => id === 'roster')!
    .columns.map(({ id }) => id);

  test.each(columns)(
    'shows the same figure, charts, handouts and report when %s of the roster has another name',
    (id) => {
      const session = open();
      const before = shown(session);
      const file = session.save();
      const name = `renamed_${id}`;
      const { label } = session.current.sheets
        .find((one) => one.id === 'roster')!
        .columns.find((one) => one.id === id)!;
      expect(
        session.execute({ do: 'change-column', sheet: 'roster', column: id, change: { name, label } }),
      ).toMatchObject({ ok: true });
      expect(shown(session)).toEqual(before);
      session.execute({ do: 'change-column', sheet: 'roster', column: id, change: { name: id } });
      expect(session.save()).toBe(file);
    },
  );

  test('shows the same when its named cells have other names', () => {
    const session = open();
    const before = shown(session);
    for (const { name } of session.outline().names)
      expect(session.execute({ do: 'rename-name', name, to: `my_${name}` })).toMatchObject({ ok: true });
    expect(shown(session)).toEqual(before);
  });
});
