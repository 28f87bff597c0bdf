import { HyperFormula, type RawCellContent } from 'hyperformula';
import { describe, expect, test } from 'vitest';
import { Kind, type Range, rangeOf } from '../../functions/core/value.ts';
import type { Cell } from '../../src/book/cells.ts';
import { cellEngineSettings } from '../../src/calc/cell-engine/settings.ts';
import { readAndBind } from '../../src/calc/graph/formula.ts';
import { indexBook } from '../../src/calc/language/book-index.ts';
import { limits } from '../../src/calc/limits.ts';
import type { Source } from '../../src/calc/plan/api.ts';
import { compileFree } from '../../src/calc/plan/compile.ts';
import { Bench, bookOf, f } from './book-for-test.ts';

/*
 * Formulas of single cells over long columns, where arrays stay typed arrays. Outside reference: hyperformula's own
 * cells with the same values, and plain loops.
 */
const ROWS = 600;
const every = (make: (i: number) => Cell): Cell[] => Array.from({ length: ROWS }, (_, i) => make(i));
const people = {
  gender: every((i) => (i % 97 === 5 ? null : i % 3 === 0 ? 'Male' : i % 3 === 1 ? 'female' : 'Female')),
  lean: every((i) => (i % 41 === 7 ? null : 30 + ((i * 7919) % 173) / 10)),
  mixed: every((i) => [i, 'a', null, true, '3', { date: 45000 + i }, false, 'TRUE'][i % 8] as Cell),
  day: every((i) => ({ date: 45000 + i })),
};
const bench = new Bench(
  bookOf({
    people,
    few: { who: ['Male', 'Female', 'nobody'], mean: ['x', 'x', 'x'] },
  }),
);
const day = (serial: number): Date => new Date(1899, 11, 30 + serial);
const raw = (cell: Cell): RawCellContent => {
  if (typeof cell === 'string') return `'${cell}`;
  if (typeof cell === 'object' && cell !== null) return 'date' in cell ? day(cell.date) : null;
  return cell;
};
const columns = Object.values(people);
const engine = HyperFormula.buildFromSheets(
  { people: Array.from({ length: ROWS }, (_, row) => columns.map((cells) => raw(cells[row]!))) },
  { ...cellEngineSettings, useArrayArithmetic: true },
);
const address: Readonly<Record<string, string>> = {
  gender: `$A$1:$A$${ROWS}`,
  lean: `$B$1:$B$${ROWS}`,
  mixed: `$C$1:$C$${ROWS}`,
  day: `$D$1:$D$${ROWS}`,
};

const plain = (value: unknown): unknown => {
  if (value === null || value === undefined) return null;
  if (typeof value === 'object' && 'type' in value) return (value as { value?: string }).value;
  return typeof value === 'number' ? Number(value.toPrecision(12)) : value;
};
function inEngine(formula: string): unknown {
  const text = `=${formula.replaceAll(/people\.(\w+)/g, (_, name: string) => address[name]!).replaceAll(/\bTRUE\b(?!\()/g, 'TRUE()')}`;
  const value = engine.calculateFormula(text, engine.getSheetId('people')!);
  return Array.isArray(value) ? value.flat().map(plain) : plain(value);
}
const inBook = (formula: string): unknown => {
  const value = bench.eval(formula);
  return Array.isArray(value) ? value.map(plain) : plain(value);
};

describe('arrays over whole columns equal those of the cell engine', () => {
  test.each([
    'COUNT(FILTER(people.lean, people.gender="Male"))',
    'SUM(FILTER(people.lean, people.gender="FEMALE"))',
    'AVERAGE(FILTER(people.lean, people.lean>35, people.gender<>"Male"))',
    'FILTER(people.lean, people.lean>46)',
    'FILTER(people.mixed, people.lean>46)',
    'FILTER(people.gender, people.mixed)',
    'FILTER(people.gender, people.mixed=TRUE)',
    'FILTER(people.lean, people.lean>1000)',
    'FILTER(people.day, people.lean>46)',
    'COUNTA(FILTER(people.mixed, people.mixed<>""))',
    'SUM((people.gender="Male")*people.lean)',
    'MAX(people.lean-AVERAGE(people.lean))',
    'MEDIAN(FILTER(people.lean, people.gender="Male"))',
    'STDEV.S(FILTER(people.lean, people.gender="Male"))',
    'SUM(FILTER(people.lean/people.mixed, people.lean>40))',
    'COUNT(FILTER(people.lean, people.gender="Male"))+COUNT(FILTER(people.lean, people.gender="Female"))',
    'IF(SUM(people.lean)>1, "much", "little")',
  ])('%s', (formula) => {
    expect(inBook(formula)).toEqual(inEngine(formula));
  });
});

describe('a formula of one cell over long columns', () => {
  const leanOf = (gender: string): number[] =>
    people.lean.filter(
      (x, i): x is number =>
        typeof x === 'number' && String(people.gender[i]).toLowerCase() === gender.toLowerCase(),
    );
  const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;

  test('may take its condition from its own row', () => {
    const edited = new Bench(bench.book);
    edited.put(
      'few',
      'mean',
      0,
      ...[0, 1, 2].map(() => f('AVERAGE(FILTER(people.lean, people.gender=who))')),
    );
    expect(edited.value('few', 'mean', 0)).toBeCloseTo(mean(leanOf('Male')), 10);
    expect(edited.value('few', 'mean', 1)).toBeCloseTo(mean(leanOf('female')), 10);
    expect(edited.value('few', 'mean', 2)).toBe('#N/A');
  });
  test('may give its arrays names', () => {
    const formula =
      'LET(m, FILTER(people.lean, people.gender="Male"), w, FILTER(people.lean, people.gender="Female"), AVERAGE(m)-AVERAGE(w))';
    expect(bench.eval(formula)).toBeCloseTo(mean(leanOf('Male')) - mean(leanOf('female')), 10);
    const sum = people.lean.reduce<number>((total, x) => total + (typeof x === 'number' ? x : 0), 0);
    expect(bench.eval('LET(m, 2, LET(m, SUM(people.lean)*m, m+1))')).toBeCloseTo(2 * sum + 1, 6);
  });
  test('gives dates as dates', () => {
    const edited = new Bench(bookOf({ people, out: { at: every(() => null) } }));
    edited.put('out', 'at', 0, f('FILTER(people.day, people.lean>46)'));
    const kinds = edited.calculation.column('out', 'at').kinds;
    expect([...kinds.slice(0, 3)]).toEqual([Kind.date, Kind.date, Kind.date]);
    expect(edited.value('out', 'at', 0)).toBe(45000 + people.lean.findIndex((x) => Number(x) > 46));
  });
  test('keeps its array when the column it came from changes and no cell of the array does', () => {
    const edited = new Bench(bookOf({ people, out: { at: every(() => null) } }));
    edited.put('out', 'at', 0, f('people.lean'));
    edited.put('people', 'lean', 3, 99);
    expect(edited.values('out', 'at').slice(0, 5)).toEqual([
      30,
      people.lean[1],
      people.lean[2],
      99,
      people.lean[4],
    ]);
  });
});

describe('equal pieces of formulas', () => {
  const book = bookOf({ people });
  const bound = (text: string) =>
    readAndBind(text, indexBook(book), { sheet: 'people', column: false }).bound;
  const ranges = new Map<string, Range>();
  const source: Source = {
    column: (_, column) => ranges.get(column)!,
    cell: () => null,
  };
  const fresh = (...names: ('gender' | 'lean')[]): void => {
    for (const name of names) ranges.set(name, rangeOf(ROWS, 1, people[name] as never));
  };

  test('are computed once until one of their columns has another value', () => {
    fresh('gender', 'lean');
    const first = compileFree(bound('FILTER(people.lean, people.gender="Male")'));
    const second = compileFree(bound('FILTER( people.lean, (people.gender)="Male" )'));
    const other = compileFree(bound('FILTER(people.lean, people.gender="Female")'));
    const area = first(source, 0);
    expect(second(source, 3)).toBe(area);
    expect(other(source, 0)).not.toBe(area);
    expect(first(source, 0)).toBe(area);
    fresh('lean');
    const next = first(source, 0);
    expect(next).not.toBe(area);
    expect(second(source, 0)).toBe(next);
  });
  test('are computed again where they draw random numbers', () => {
    fresh('gender', 'lean');
    const random = compileFree(bound('people.lean*RAND()'));
    expect(random(source, 0)).not.toBe(random(source, 0));
  });
});

test('a function of single cells is refused more cells than it can be handed, with a sentence', () => {
  const rows = limits.handedCells + 1;
  const column = rangeOf(rows, 1, [1, 2, 4]);
  const book = bookOf({ s: { x: [1] } });
  const skew = compileFree(readAndBind('SKEW(s.x*2)', indexBook(book), { sheet: 's', column: false }).bound);
  const { vector } = skew({ column: () => column, cell: () => null }, 0);
  expect(vector.valueAt(0)).toMatchObject({ code: '#VALUE!', reason: 'too-many-cells' });
});

describe('what is too large is refused with a sentence', () => {
  const rows = 200_000;
  const column = rangeOf(rows, 1, Array(rows).fill('some text'));
  const book = bookOf({ s: { x: [1] } });
  const reasonOf = (text: string): unknown => {
    const { bound } = readAndBind(text, indexBook(book), { sheet: 's', column: false });
    const { rows, columns, vector } = compileFree(bound)({ column: () => column, cell: () => null }, 0);
    return [rows, columns, (vector.valueAt(0) as { reason?: string }).reason];
  };
  test.each([
    'SUM((s.x="a")*TRANSPOSE(s.x="a"))',
    '(s.x="a")*TRANSPOSE(s.x="a")',
    'IF(s.x="a", TRANSPOSE(s.x), 1)',
  ])('%s, before it starts', (text) => {
    expect(reasonOf(text)).toEqual([1, 1, 'array-too-large']);
  });
  test('TEXTJOIN of more cells than fit on the stack', () => {
    expect(reasonOf('TEXTJOIN(",", TRUE, s.x)')).toEqual([1, 1, 'too-much-at-once']);
    expect(
      bench.calculation.sentence({ code: '#VALUE!', reason: 'too-much-at-once', function: 'TEXTJOIN' }),
    ).toBe('TEXTJOIN cannot take so many cells at once. Take fewer rows first, for example with FILTER.');
  });
});
