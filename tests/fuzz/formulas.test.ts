import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { registry } from '../../functions/registry.ts';
import { functionNames } from '../../src/calc/index.ts';
import { Session } from '../../src/session/session.ts';
import { formulaText } from '../calc/language/formulas.ts';
import { SEED } from '../seed.ts';
import { type Chance, mutate, nasty } from './mutate.ts';
import { fuzz } from './run.ts';

const names = [...functionNames()];
const corpus = [
  ...[...registry.values()].flatMap(({ examples }) =>
    examples.map(({ formula }) => formula.replace(/^=/, '')),
  ),
  ...names.map((name) => `${name}(A1, femur, log.load, "x", 3)`),
  ...fc.sample(formulaText, { numRuns: 200, seed: SEED }),
  'SUMIFS(log.load, log.athlete, A1, log.load, ">3")',
  'LET(x, femur * 2, y, x + 1, y / x)',
  'IFERROR(SEARCH("a*b?c", word), {1,2;3,4})',
];

/** Formulas that ask for much: they must be refused or cut short, never computed for long. */
const greedy: readonly string[] = [
  'SEQUENCE(40000,1000)',
  'REPT("x",1000000)',
  'SUM(A1:XFD1048576)',
  `SEARCH("${'*a'.repeat(12)}", REPT("a",5000))`,
  `${'('.repeat(600)}1${')'.repeat(600)}`,
  `${'-'.repeat(5_000)}1`,
  Array.from({ length: 3_000 }, () => '1').join('+'),
  'LET(a,1,b,a&a,c,b&b,d,c&c,e,d&d,f,e&e,g,f&f,h,g&g,REPT(h,9999))',
  'FACT(170)^9999',
  'MMULT(log.load, log.load)',
  'TRANSPOSE(log.load)',
  'COMBIN(1E9,5E8)',
  'POWER(10,1E308)',
  'SUBSTITUTE(REPT("a",32767),"a",REPT("b",32767))',
];

function sample(): Session {
  const session = Session.create();
  const add = (label: string, columns: readonly string[]) =>
    session.execute({
      do: 'add-sheet',
      label,
      rows: 30,
      columns: columns.map((name) => ({
        label: name,
        kind: name === 'word' || name === 'athlete' ? 'text' : 'number',
      })),
    });
  add('Roster', ['word', 'femur', 'tibia', 'mass', 'free']);
  add('Log', ['athlete', 'load', 'reps']);
  const numbers = Array.from({ length: 30 }, (_, i) => [
    `w${i % 5}`,
    String(30 + i),
    String(40 - i),
    i % 7 ? '80' : '',
  ]);
  session.execute({
    do: 'set-cells',
    sheet: 'roster',
    row: 0,
    columns: ['word', 'femur', 'tibia', 'mass'],
    texts: numbers,
  });
  session.execute({
    do: 'set-cells',
    sheet: 'log',
    row: 0,
    columns: ['athlete', 'load', 'reps'],
    texts: numbers.map(([word, a, b]) => [word!, a!, b!]),
  });
  return session;
}

/** One formula put into another, where a name or a number stood: mostly right, and deep. */
function grown(chance: Chance): string {
  let out = chance.of(corpus);
  for (let times = 1 + chance.n(3); times > 0; times--) {
    const spots = [...out.matchAll(/\b[a-z_][\w.]*\b(?!\()|\b\d+(\.\d+)?\b/gi)];
    if (spots.length === 0) break;
    const spot = chance.of(spots);
    out = `${out.slice(0, spot.index)}(${chance.of(corpus)})${out.slice(spot.index + spot[0].length)}`;
  }
  return out;
}

const formula = (chance: Chance): string =>
  chance.n(12) === 0
    ? chance.of(greedy)
    : chance.n(20) === 0
      ? chance.of(nasty)
      : chance.n(2) === 0
        ? grown(chance).slice(0, 9_000)
        : mutate(chance.of(corpus), chance.n(4) === 0 ? greedy : corpus, chance).slice(0, 9_000);

describe('hostile formulas', () => {
  test('are checked and tried out: what comes is a value, an error with a sentence, or a table, and soon', async () => {
    const session = sample();
    await fuzz('formulas, tried out', 0.2, (chance) => {
      const text = formula(chance);
      const place = { sheet: 'roster', column: 'free', row: chance.n(30) };
      const { ok, problems } = session.check(text, place);
      for (const { sentence, from, to } of problems) {
        expect(sentence).not.toBe('');
        expect(from).toBeLessThanOrEqual(to);
        expect(to).toBeLessThanOrEqual(text.length);
      }
      const { display } = session.preview(text, place);
      expect(typeof display).toBe('string');
      return ok ? 'formulas' : 'with problems';
    });
  });

  test('are entered into cells and columns, computed, and taken back, and the book is what it was', async () => {
    const session = sample();
    const before = session.save();
    const { counts } = await fuzz('formulas, entered', 0.1, (chance) => {
      const text = formula(chance);
      const row = chance.n(3) === 0 ? {} : { row: chance.n(30) };
      const done = session.execute({
        do: 'set-formula',
        sheet: 'roster',
        column: 'free',
        ...row,
        formula: text,
      });
      if (!done.ok) {
        expect(done.sentence).toMatch(/[.!?)”"]$/);
        return 'refused';
      }
      for (const doubt of session.doubts()) expect(doubt.sentence).not.toBe('');
      session.tile('roster', 0, 30, 0, 5);
      session.toCsv('roster');
      expect(Session.open(session.save()).save()).toBe(session.save());
      expect(session.undo().ok).toBe(true);
      return 'entered';
    });
    expect(counts.entered).toBeGreaterThan(0);
    expect(session.save()).toBe(before);
  });
});
