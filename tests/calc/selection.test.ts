import { describe, expect, test } from 'vitest';
import { applyEdit } from '../../src/book/apply.ts';
import { createBook } from '../../src/book/book.ts';
import { createCalculation } from '../../src/calc/index.ts';

/** A sheet of five numbers, a blank among them, and the words that go with them. */
function made() {
  const book = createBook();
  const calculation = createCalculation(book);
  const { changes } = applyEdit(book, {
    do: 'add-sheet',
    index: 0,
    sheet: {
      id: 'sheet',
      name: 'sheet',
      label: 'sheet',
      purpose: 'gathered',
      rows: 6,
      columns: [
        { column: { id: 'x', name: 'x', label: 'x', kind: 'number' }, cells: [1, 2, 4, null, 8, 16] },
        { column: { id: 'y', name: 'y', label: 'y', kind: 'number', formula: 'x * 10' } },
        {
          column: { id: 'who', name: 'who', label: 'who', kind: 'text' },
          cells: ['a', 'b', 'a', 'b', 'a', 'b'],
        },
      ],
    },
  });
  const work = calculation.update(changes);
  while (!work.next().done);
  return calculation;
}

describe('a formula over some rows of a sheet', () => {
  test.each<[string, number[] | undefined, unknown]>([
    ['MEDIAN(x)', undefined, 4],
    ['MEDIAN(x)', [0, 1, 2], 2],
    ['MEDIAN(x)', [4, 0], 4.5],
    ['COUNT(x)', [2, 3, 4], 2],
    ['SUM(y)', [1, 2], 60],
    ['SUM(x) / SUM(sheet.x)', [4, 5], 24 / 31],
    ['MAX(x) - MIN(x)', [1, 4], 6],
    ['SUMIF(who, "a", x)', [0, 1, 2], 5],
    ['INDEX(who, 2)', [5, 0], 'a'],
    // .2 × SD of 1, 2 and 4: mean 7/3, SD √(7/3). Hopkins 2000, Sports Med 30:1–15.
    ['TEST.SWC(x)', [0, 1, 2], 0.2 * Math.sqrt(7 / 3)],
    ['LET(m, AVERAGE(x), m * 2)', [0, 1], 3],
  ])('%s of rows %j is %s', (formula, rows, value) => {
    const got = made().ofSelection(formula, 'sheet', rows && Int32Array.from(rows));
    if (typeof value === 'number') expect(got).toBeCloseTo(value, 12);
    else expect(got).toBe(value);
  });

  test.each([
    ['x * 2', '#SPILL!'],
    ['nothing', '#NAME?'],
    ['AVERAGE(x) / 0', '#DIV/0!'],
    ['1 +', '#ERROR!'],
  ])('%s is an error: %s', (formula, code) => {
    expect(made().ofSelection(formula, 'sheet', Int32Array.of(0, 1))).toMatchObject({ code });
  });

  test('of no rows is what the function says of nothing', () => {
    expect(made().ofSelection('SUM(x)', 'sheet', new Int32Array(0))).toBe(0);
    expect(made().ofSelection('AVERAGE(x)', 'sheet', new Int32Array(0))).toMatchObject({ code: '#DIV/0!' });
  });
});
