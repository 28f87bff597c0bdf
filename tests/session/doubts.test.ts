import { describe, expect, test } from 'vitest';
import { Session } from '../../src/session/session.ts';

function roster(
  rows: readonly (readonly string[])[],
  ankle: { label?: string; note?: string } = {},
): Session {
  const session = Session.create();
  const lengths = ['femur', 'tibia', 'trunk', 'stature'];
  session.execute({
    do: 'add-sheet',
    name: 'roster',
    columns: [
      { name: 'athlete', kind: 'text' },
      ...lengths.map((name) => ({ name, dimension: 'length' as const })),
      { name: 'ankle', dimension: 'angle', ...ankle },
      { name: 'tested', kind: 'date' },
    ],
  });
  session.execute({
    do: 'set-cells',
    sheet: 'roster',
    row: 0,
    columns: ['athlete', ...lengths, 'ankle', 'tested'],
    texts: rows.map((row) => [...row]),
  });
  return session;
}
const ana = ['Ana', '42', '41', '51', '176', '38', ''];
const about = (session: Session) => session.doubts().map((doubt) => doubt.about);
const isoDaysAgo = (days: number) => new Date(Date.now() - days * 86_400_000).toISOString().slice(0, 10);

describe('what the book doubts', () => {
  test('lengths that fit no body, with the cause that the survey’s limits give, and the lifter’s name', () => {
    // ANSUR II (Gordon et al. 2014): femur/tibia within .6963–1.2084; the sum within .72–.84 of stature.
    const session = roster([
      ana,
      ['Bo', '52', '41', '55', '190', '38', ''],
      ['Cleo', '42', '41', '51', '140', '38', ''],
      ['Dan', '', '41', '51', '140', '38', ''],
    ]);
    expect(session.doubts()).toMatchObject(
      [
        {
          about: 'length',
          place: { sheet: 'roster', column: 'femur', row: 1 },
          sentence: /^Bo: femur\/tibia/,
        },
        { about: 'length', place: { row: 2 }, sentence: /^Cleo: .*of stature/ },
      ].map(({ sentence, ...rest }) => ({ ...rest, sentence: expect.stringMatching(sentence) })),
    );
    for (const doubt of session.doubts()) expect(doubt.remedy).toMatch(/\.$/);
    session.execute({ do: 'set-cells', sheet: 'roster', row: 1, columns: ['femur'], texts: [['44']] });
    expect(session.doubts().map(({ place }) => place.row)).toEqual([2]);
  });

  test('an ankle range that is low for everyone, or whose label says that no weight was on it', () => {
    const low = (ankle: string) => ['X', '42', '41', '51', '176', ankle, ''];
    expect(about(roster([low('12'), low('18'), low('24')]))).toEqual(['ankle']);
    expect(about(roster([low('12'), low('18'), low('26')]))).toEqual([]);
    // Two lifters are too few to say so of a column.
    expect(about(roster([low('12'), low('18')]))).toEqual([]);
    expect(about(roster([ana], { label: 'Ankle, non-weight-bearing' }))).toEqual(['ankle']);
    expect(about(roster([ana], { note: 'passive, lying prone' }))).toEqual(['ankle']);
    expect(about(roster([ana], { label: 'Ankle, weight-bearing' }))).toEqual([]);
    expect(roster([low('12'), low('18'), low('24')]).doubts()[0]!.sentence).toContain('working assumption');
  });

  test('tests that are older than the time that was chosen, by each lifter’s latest', () => {
    const on = (name: string, days: number) => [name, '42', '41', '51', '176', '38', isoDaysAgo(days)];
    const session = roster([on('Ana', 400), on('Ana', 20), on('Bo', 300), on('Cleo', 250)]);
    expect(session.doubts()).toEqual([]);
    session.execute({ do: 'set-part', part: 'settings', key: 'doubts', value: { testsOlderThan: 180 } });
    expect(session.doubts()).toMatchObject([
      {
        about: 'old test',
        place: { column: 'tested', row: 2 },
        sentence: expect.stringMatching(/^2 of 3 .*Bo/),
      },
    ]);
    session.execute({ do: 'set-part', part: 'settings', key: 'doubts', value: { testsOlderThan: 365 } });
    expect(session.doubts()).toEqual([]);
  });

  test('errors are told once by cause, with their count; held values and mixed dimensions each with a remedy', () => {
    const session = roster([ana, ['Bo', 'long', '41', '51', '176', '38', ''], ana]);
    session.execute({
      do: 'add-column',
      sheet: 'roster',
      column: { name: 'mixed', formula: 'femur + ankle' },
    });
    session.execute({
      do: 'add-column',
      sheet: 'roster',
      column: { name: 'share', formula: 'MOMENT.SHARE(0, 0)' },
    });
    const doubts = session.doubts();
    expect(new Set(doubts.map((doubt) => doubt.about))).toEqual(new Set(['held', 'dimension', 'error']));
    expect(doubts.filter((doubt) => doubt.place.column === 'share')).toMatchObject([
      { about: 'error', sentence: expect.stringContaining('(3 rows)') },
    ]);
    for (const doubt of doubts) expect(doubt.remedy).toMatch(/\.$/);
    expect(new Set(doubts.map(({ key }) => key)).size).toBe(doubts.length);
  });
});

describe('accepting a doubt', () => {
  const bo = ['Bo', '52', '41', '55', '190', '38', ''];

  test('takes a reason, is kept in the file, no longer counts, and can be undone', () => {
    const session = roster([ana, bo]);
    expect(session.outline().doubts).toBe(1);
    const before = session.save();
    const { key } = session.doubts()[0]!;
    const accepted = session.execute({
      do: 'accept-doubt',
      key,
      reason: '  measured twice, both sides  ',
      on: '2026-03-04',
    });
    expect(accepted).toMatchObject({ ok: true, outline: { doubts: 0, undo: 'Accept a check' } });
    const again = Session.open(session.save());
    expect(again.doubts()).toMatchObject([
      { key, accepted: { reason: 'measured twice, both sides', on: '2026-03-04' } },
    ]);
    session.undo();
    expect(session.save()).toBe(before);
    expect(session.outline().doubts).toBe(1);
    again.execute({ do: 'accept-doubt', key, reason: null });
    expect(again.outline().doubts).toBe(1);
  });

  test('holds while rows move, and ends when what it was about changes', () => {
    const session = roster([ana, bo]);
    session.execute({ do: 'accept-doubt', key: session.doubts()[0]!.key, reason: 'a long thigh' });
    session.execute({ do: 'add-rows', sheet: 'roster', row: 0, count: 3 });
    expect(session.doubts()).toMatchObject([{ place: { row: 4 }, accepted: { reason: 'a long thigh' } }]);
    session.execute({ do: 'set-cells', sheet: 'roster', row: 4, columns: ['femur'], texts: [['54']] });
    expect(session.doubts()[0]!.accepted).toBeUndefined();
    expect(session.outline().doubts).toBe(1);
  });

  test('refuses a blank reason, a doubt that is not there, and one that was not accepted', () => {
    const session = roster([ana, bo]);
    const { key } = session.doubts()[0]!;
    for (const command of [
      { key, reason: '   ' },
      { key: 'length zzz', reason: 'why not' },
      { key, reason: null },
    ])
      expect(session.execute({ do: 'accept-doubt', ...command })).toMatchObject({
        ok: false,
        sentence: expect.stringMatching(/\.$/),
      });
  });

  test('a spoilt record of a file accepts nothing', () => {
    const session = roster([['Bo', '52', '41', '55', '190', '38', '']]);
    const [doubt] = session.doubts();
    expect(doubt).toMatchObject({ about: 'length' });
    session.execute({ do: 'set-part', part: 'accepted', key: doubt!.key, value: { reason: 7 } });
    expect(session.doubts()[0]!.accepted).toBeUndefined();
    expect(session.outline().doubts).toBe(session.doubts().length);
  });
});

describe('what was accepted', () => {
  test('stays accepted when columns, sheets and named cells in its sentence are renamed', () => {
    const session = Session.create();
    const run = (command: Parameters<Session['execute']>[0]) =>
      expect(session.execute(command)).toMatchObject({ ok: true });
    run({
      do: 'add-sheet',
      name: 'log',
      columns: [
        { name: 'load', dimension: 'mass' },
        { name: 'height', dimension: 'length' },
        { name: 'limit', dimension: 'mass' },
      ],
    });
    const texts = [['100', '170', '90']];
    run({ do: 'set-cells', sheet: 'log', row: 0, columns: ['load', 'height', 'limit'], texts });
    run({ do: 'name-cell', sheet: 'log', column: 'limit', row: 0, name: 'most' });
    for (const [name, formula] of [
      ['mixed', 'load + height'],
      ['long', 'load + load + load + load + load + load + load + load - height'],
      ['setting', 'height - most'],
      ['elsewhere', 'SUM(log.load) + height'],
      ['apart', 'load / (load - load)'],
    ] as const)
      run({ do: 'add-column', sheet: 'log', column: { name, formula } });
    const waiting = () => session.doubts().filter(({ accepted }) => !accepted);
    expect(waiting()).toHaveLength(5);
    for (const { key, sentence } of waiting()) run({ do: 'accept-doubt', key, reason: sentence });
    expect(waiting()).toEqual([]);
    run({ do: 'change-column', sheet: 'log', column: 'load', change: { name: 'weight_on_the_bar' } });
    run({ do: 'change-column', sheet: 'log', column: 'height', change: { name: 'h' } });
    run({ do: 'change-sheet', sheet: 'log', change: { name: 'diary' } });
    run({ do: 'rename-name', name: 'most', to: 'ceiling_of_it' });
    expect(JSON.stringify(session.doubts())).toContain('weight_on_the_bar');
    expect(waiting()).toEqual([]);
    // Another mistake in the same column is another doubt.
    run({ do: 'set-formula', sheet: 'log', column: 'mixed', formula: 'limit + h' });
    expect(waiting()).toHaveLength(1);
  });
});
