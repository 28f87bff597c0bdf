import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  loseColumn,
  loseNamed,
  loseSheet,
  moveColumns,
  moveRows,
  renameColumn,
  renameNamed,
  renameSheet,
  shiftRelative,
} from '../../../src/calc/index.ts';
import { parse } from '../../../src/calc/language/parse.ts';
import { bookOf } from '../book-for-test.ts';
import { formulaText } from './formulas.ts';

const cells = Array.from({ length: 12 }, (_, i) => i);
const columns = { femur: cells, tibia: cells, Mass: cells, größe: cells, load_kg: cells };
const book = (): ReturnType<typeof bookOf> =>
  bookOf({ roster: columns, log: columns }, { target_lean: ['roster', 'tibia', 2] });

describe('renaming', () => {
  const b = book();
  test.each([
    ['femur/tibia', 'thigh/tibia'],
    ['FEMUR / 2', 'thigh / 2'],
    ['roster.femur+log.femur', 'roster.thigh+log.femur'],
    ['AVERAGE( Roster.Femur )', 'AVERAGE( Roster.thigh )'],
    ['"femur"&femur', '"femur"&thigh'],
    ['LET(femur, 2, femur*2)', 'LET(femur, 2, femur*2)'],
    ['LET(x, femur, femur, x, femur)', 'LET(x, thigh, femur, x, femur)'],
    ['femur+', 'femur+'],
    ['femur_2', 'femur_2'],
  ])('a column turns %s into %s', (before, after) => {
    expect(renameColumn(before, b, 'roster', 'roster', 'femur', 'thigh')).toBe(after);
  });
  test('a column of another sheet leaves this sheet’s column of that name alone', () => {
    expect(renameColumn('femur+log.femur', b, 'roster', 'log', 'femur', 'thigh')).toBe('femur+log.thigh');
  });
  test.each([
    ['roster.femur', 'lifters.femur'],
    ['roster!B7 + log!B7', 'lifters!B7 + log!B7'],
    ['SUM(ROSTER!B7:C9)', 'SUM(lifters!B7:C9)'],
    ['femur', 'femur'],
  ])('a sheet turns %s into %s', (before, after) => {
    expect(renameSheet(before, b, 'log', 'roster', 'lifters')).toBe(after);
  });
  test('a named cell is found in any case', () => {
    expect(renameNamed('Target_Lean-2', b, 'log', 'target_lean', 'aim')).toBe('aim-2');
  });
  test('there and back is the formula as it was, whatever the formula', () => {
    const renamed = bookOf({ roster: { ...columns, thigh: cells }, log: columns });
    const there = book();
    const back = bookOf({
      roster: { thigh: cells, tibia: cells, Mass: cells, größe: cells, load_kg: cells },
      log: columns,
    });
    expect(renamed.sheets.length).toBe(2);
    fc.assert(
      fc.property(formulaText, (text) => {
        const lower = text.replaceAll(/FEMUR/gi, 'femur');
        const once = renameColumn(lower, there, 'roster', 'roster', 'femur', 'thigh');
        expect(renameColumn(once, back, 'roster', 'roster', 'thigh', 'femur')).toBe(lower);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('deleting', () => {
  const b = book();
  test.each([
    ['femur/tibia', '#REF!femur/tibia'],
    ['AVERAGE(roster.femur)+log.femur', 'AVERAGE(#REF!roster.femur)+log.femur'],
    ['LET(femur, 2, femur)', 'LET(femur, 2, femur)'],
  ])('a column turns %s into %s', (before, after) => {
    expect(loseColumn(before, b, 'roster', 'roster', 'femur')).toBe(after);
  });
  test('a sheet takes its columns and cells along', () => {
    expect(loseSheet('roster.femur+roster!B7+SUM(roster!$B$7:C9)+B7', b, 'log', 'roster')).toBe(
      '#REF!roster.femur+#REF!roster!B7+SUM(#REF!roster!$B$7:C9)+B7',
    );
  });
  test('a named cell leaves its name', () => {
    expect(loseNamed('lean-target_lean', b, 'log', 'target_lean')).toBe('lean-#REF!target_lean');
  });
});

describe('addresses follow their rows', () => {
  const b = book();
  const inserted = (at: number, n: number) => (row: number) => (row < at ? row : row + n);
  const removed = (at: number, n: number) => (row: number) =>
    row < at ? row : row < at + n ? undefined : row - n;
  const cases: readonly (readonly [string, (row: number) => number | undefined, string])[] = [
    ['B3+B7', inserted(4, 2), 'B3+B9'],
    ['SUM(B3:B7)', inserted(4, 2), 'SUM(B3:B9)'],
    ['SUM(B3:B7)', inserted(2, 1), 'SUM(B4:B8)'],
    ['SUM(B3:B7)', inserted(7, 1), 'SUM(B3:B7)'],
    ['SUM(B3:B1000)', inserted(4, 2), 'SUM(B3:B1002)'],
    ['B3+B7', removed(2, 1), '#REF!B3+B6'],
    ['SUM(B3:B7)', removed(2, 2), 'SUM(B3:B5)'],
    ['SUM(B3:B7)', removed(5, 5), 'SUM(B3:B5)'],
    ['SUM(B3:B7)', removed(0, 9), 'SUM(#REF!B3:B7)'],
    ['log!$B$3 + b$3', inserted(0, 1), 'log!$B$3 + B$4'],
    ['B2+B3', (row) => [0, 2, 1][row] ?? row, 'B3+B2'],
    ['SUM(B1:B3)', (row) => [2, 1, 0][row] ?? row, 'SUM(B1:B3)'],
    ['SUM(B1:B2)', (row) => [0, 5, 1, 2, 3, 4][row] ?? row, 'SUM(B1:B2)'],
  ];
  test.each(cases)('%s', (before, to, after) => {
    expect(moveRows(before, b, 'roster', 'roster', to)).toBe(after);
  });
  test('in a column’s formula only fixed rows do, and those of other sheets too', () => {
    const formula = 'B1+B$3+roster!$C$3';
    expect(moveRows(formula, b, 'roster', 'roster', inserted(0, 2), true)).toBe('B1+B$5+roster!$C$5');
  });
  const longer = [0, 1, 2, 3, 4].map((n) =>
    bookOf({ roster: { femur: Array.from({ length: 12 + n }, () => 0) }, log: columns }),
  );
  test('an insertion taken back is the formula as it was, whatever the formula', () => {
    fc.assert(
      fc.property(formulaText, fc.nat(11), fc.integer({ min: 1, max: 4 }), (text, at, n) => {
        const once = moveRows(text, b, 'roster', 'roster', inserted(at, n));
        const back = moveRows(once, longer[n]!, 'roster', 'roster', removed(at, n));
        expect(bare(back)).toEqual(bare(text));
      }),
      { numRuns: 1000 },
    );
  });
  /** The tree: a range typed from its other corner is written in order once it was moved. */
  const bare = (formula: string): unknown =>
    JSON.parse(JSON.stringify(parse(formula), (key, value) => (/span/i.test(key) ? undefined : value)));
});

describe('addresses follow their columns', () => {
  const b = book();
  test.each<readonly [string, (c: number) => number | undefined, string]>([
    ['B3+C3', (c) => (c < 1 ? c : c + 1), 'C3+D3'],
    ['B3+C3', (c) => (c === 1 ? undefined : c > 1 ? c - 1 : c), '#REF!B3+B3'],
    ['SUM(A1:C9)', (c) => (c === 1 ? undefined : c > 1 ? c - 1 : c), 'SUM(A1:B9)'],
    ['A1+B1', (c) => [1, 0][c] ?? c, 'B1+A1'],
    ['roster!$B$3', (c) => c + 1, 'roster!$C$3'],
  ])('%s', (before, to, after) => {
    expect(moveColumns(before, b, 'roster', 'roster', to)).toBe(after);
  });
});

describe('filling and copying', () => {
  test.each([
    ['B3+$B3+B$3+$B$3', 2, 1, 'C5+$B5+C$3+$B$3'],
    ['SUM(roster!B3:C4)', 1, 0, 'SUM(roster!B4:C5)'],
    ['A1*2', -1, 0, '#REF!A1*2'],
    ['femur+roster.femur', 5, 5, 'femur+roster.femur'],
  ])('%s moved by %i rows and %i columns', (before, rows, columns_, after) => {
    expect(shiftRelative(before, rows, columns_)).toBe(after);
  });
});
