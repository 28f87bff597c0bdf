import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { IntakeRefusal } from '../../src/intake/index.ts';
import { type Prepared, preparing } from '../../src/session/imports/prepare-import.ts';
import { Session } from '../../src/session/session.ts';
import { parseTsv, writeTsv } from '../../src/session/text/tsv.ts';
import { type Chance, mutate, mutateBytes, nasty } from './mutate.ts';
import { fuzz } from './run.ts';

const folder = join(import.meta.dirname, '..', 'intake', 'corpus');
const files = readdirSync(folder)
  .filter((name) => name.endsWith('.csv'))
  .map((name) => new Uint8Array(readFileSync(join(folder, name))));
const texts = files.map((bytes) => new TextDecoder('latin1').decode(bytes));

/** Runs to the end at once. */
function end<T>(work: Generator<unknown, T>): T {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}

/** A file out of the corpus, changed as text, as bytes, or cell by cell. */
function file(chance: Chance): Uint8Array {
  const which = chance.n(3);
  if (which === 0) return mutateBytes(chance.of(files), chance);
  if (which === 1) return new TextEncoder().encode(mutate(chance.of(texts), texts, chance));
  const delimiter = chance.of([',', ';', '\t']);
  const width = 1 + chance.n(6);
  const cell = (): string =>
    chance.n(3) === 0 ? `"${chance.of(nasty).replaceAll('"', '""')}"` : String(chance.n(1_000) / 10);
  const lines = Array.from({ length: 1 + chance.n(12) }, () =>
    Array.from({ length: width }, cell).join(delimiter),
  );
  return new TextEncoder().encode(
    [Array.from({ length: width }, (_, i) => `h${i}`).join(delimiter), ...lines].join('\n'),
  );
}

/** Formulas of cells and columns in a book file. */
const formulas = (saved: string): number => saved.split('"formula":').length - 1;

const dangerous = /^[=+\-@\t\r＝＋－＠]/;

describe('hostile files', () => {
  test('of lines are brought in whole or refused in a sentence; no formula comes of them, and none leaves as CSV', async () => {
    const { counts } = await fuzz('files of lines', 0.15, (chance) => {
      const bytes = file(chance);
      const session = Session.create();
      let prepared: Prepared;
      try {
        prepared = end(
          preparing(session, { bytes, name: chance.of(['a.csv', ...nasty]), sheet: null, now: '2025-06-01' }),
        );
      } catch (reason) {
        expect(reason).toBeInstanceOf(IntakeRefusal);
        expect((reason as Error).message).not.toBe('');
        return 'refused';
      }
      const { rows } = prepared.imported.report;
      expect(rows.placed + rows.held).toBe(rows.in);
      const done = session.writePlanned(prepared);
      expect(done.ok ? '' : done.sentence).toBe('');
      end(session.recalculate());
      const saved = session.save();
      expect(formulas(saved)).toBe(0);
      expect(Session.open(saved).save()).toBe(saved);
      for (const sheet of session.outline().sheets) {
        const parsed = Papa.parse<string[]>(session.toCsv(sheet.id));
        for (const line of parsed.data)
          for (const cell of line)
            if (dangerous.test(cell))
              expect(cell).toMatch(/^[-+]?[\d.]+(e[-+]?\d+)?$|^-?\d{4,}-\d\d-\d\d|^-$/);
      }
      expect(session.undo().ok).toBe(true);
      return 'brought in';
    });
    expect(counts['brought in']).toBeGreaterThan(0);
  });
});

describe('hostile clipboard texts', () => {
  test('come back as they were written, cell by cell', async () => {
    await fuzz('clipboard, round trip', 0.025, (chance) => {
      const width = 1 + chance.n(4);
      const block = Array.from({ length: 1 + chance.n(5) }, () =>
        Array.from({ length: width }, () => (chance.n(2) ? chance.of(nasty) : String(chance.n(100)))),
      );
      expect(parseTsv(writeTsv(block))).toEqual(block);
      return 'came back';
    });
  });

  test('are pasted as data: no formula comes of them, they are kept to the letter or held, undo takes them back', async () => {
    const session = Session.create();
    session.execute({
      do: 'add-sheet',
      label: 'Pasted',
      rows: 4,
      columns: ['number', 'text', 'date', 'yes-no'].map((kind) => ({
        label: `in ${kind}`,
        kind: kind as 'number' | 'text' | 'date' | 'yes-no',
      })),
    });
    const [sheet] = session.outline().sheets;
    const ids = sheet!.columns.map(({ id }) => id);
    const before = session.save();
    await fuzz('clipboard, pasted', 0.075, (chance) => {
      const raw = chance.n(2)
        ? mutate(chance.of(texts).replaceAll(',', '\t'), texts, chance)
        : chance.of(nasty);
      const lines = parseTsv(raw)
        .slice(0, 200)
        .map((line) => line.slice(0, ids.length));
      const width = Math.max(...lines.map((line) => line.length));
      const done = session.execute({
        do: 'set-cells',
        sheet: sheet!.id,
        row: chance.n(4),
        columns: ids.slice(0, width),
        texts: lines,
        formulas: false,
      });
      if (!done.ok) {
        expect(done.sentence).not.toBe('');
        return 'refused';
      }
      const saved = session.save();
      expect(formulas(saved)).toBe(0);
      expect(Session.open(saved).save()).toBe(saved);
      session.undo();
      expect(session.save()).toBe(before);
      return 'pasted';
    });
  });
});

/** What each command takes; the fuzz hands in some of it, in good order and in bad. */
const commands: Readonly<Record<string, readonly string[]>> = {
  'set-cells': ['sheet', 'row', 'columns', 'texts'],
  'paste-text': ['sheet', 'text', 'columns', 'runs', 'over'],
  'clear-cells': ['sheet', 'row', 'rows', 'columns'],
  'release-cells': ['sheet', 'row', 'rows', 'columns'],
  fill: ['sheet', 'columns', 'from', 'fromRows', 'row', 'rows'],
  'set-formula': ['sheet', 'column', 'row', 'formula'],
  'add-rows': ['sheet', 'row', 'count'],
  'remove-rows': ['sheet', 'row', 'count'],
  'move-rows': ['sheet', 'row', 'count', 'to'],
  'add-column': ['sheet', 'index', 'column'],
  'duplicate-column': ['sheet', 'column'],
  'remove-column': ['sheet', 'column'],
  'move-column': ['sheet', 'column', 'index'],
  'change-column': ['sheet', 'column', 'change'],
  'add-sheet': ['label', 'name', 'index', 'rows'],
  'duplicate-sheet': ['sheet'],
  'move-sheet': ['sheet', 'index'],
  'change-sheet': ['sheet', 'change'],
  'name-cell': ['sheet', 'column', 'row', 'name'],
  'rename-name': ['name', 'to'],
  'set-title': ['title'],
  'set-part': ['part', 'key', 'value'],
  'set-marks': ['sheet', 'column', 'marks'],
  'replace-text': ['sheet', 'find', 'put'],
  __proto__: ['sheet'],
  constructor: ['sheet'],
};

/** A value for a field of a command: mostly of the right sort. */
function field(key: string, command: string, chance: Chance): unknown {
  const odd = chance.of<unknown>([
    -1,
    1.5,
    NaN,
    1e9,
    null,
    [],
    {},
    true,
    chance.of(nasty),
    { __proto__: null },
  ]);
  if (chance.n(6) === 0) return odd;
  switch (key) {
    case 'sheet':
      return 's';
    case 'column':
      return command === 'add-column'
        ? { label: chance.of(nasty), kind: chance.of(['number', 'text', 'date', 'choice', 'none']) }
        : 'a_one';
    case 'columns':
      return ['a_one'];
    case 'texts':
      return [[chance.of(nasty)], ['2']];
    case 'part':
      return chance.of(['marks', 'charts', 'settings', 'nothing']);
    case 'change':
      return {
        [chance.of(['label', 'name', 'note', 'unit', 'kind', 'formula', 'choices'])]: chance.of(nasty),
      };
    case 'marks':
      return {
        rules: [{ is: chance.of(['above', 'between', 'true', 'blank']), to: chance.of(nasty), tone: 'note' }],
        scale: { from: chance.of(nasty) },
      };
    case 'formula':
    case 'name':
    case 'label':
    case 'title':
    case 'key':
    case 'value':
    case 'find':
    case 'put':
      return chance.of(nasty);
    default:
      return chance.n(7);
  }
}

describe('hostile commands', () => {
  test('are done or refused in a sentence, and never throw; what is done can be saved, opened and taken back', async () => {
    const session = Session.create();
    session.execute({ do: 'add-sheet', label: 'S', rows: 5, columns: [{ label: 'a one', kind: 'number' }] });
    const before = session.save();
    const { counts } = await fuzz('commands', 0.1, (chance) => {
      const command = chance.of(Object.keys(commands));
      const payload = Object.fromEntries(
        commands[command]!.filter(() => chance.n(12) > 0).map((key) => [key, field(key, command, chance)]),
      );
      const done = session.execute({ do: command, ...payload } as never);
      if (!done.ok) {
        expect(done.sentence).not.toBe('');
        return 'refused';
      }
      expect(Session.open(session.save()).save()).toBe(session.save());
      session.undo();
      expect(session.save()).toBe(before);
      return 'done';
    });
    expect(counts.done).toBeGreaterThan(0);
  });
});
