import { describe, expect, test } from 'vitest';
import { valueAt } from '../../functions/core/value.ts';
import { applyEdit } from '../../src/book/apply.ts';
import { createBook } from '../../src/book/book.ts';
import type { Edit } from '../../src/book/edit.ts';
import { createCalculation } from '../../src/calc/index.ts';

/** A sheet of three numbers and their doubles, and another sheet that nothing here reads. */
function made() {
  const book = createBook();
  const calculation = createCalculation(book);
  const change = (edit: Edit) => {
    const work = calculation.update(applyEdit(book, edit).changes);
    while (!work.next().done);
  };
  for (const id of ['sheet', 'other'])
    change({
      do: 'add-sheet',
      index: 0,
      sheet: {
        id,
        name: id,
        label: id,
        purpose: 'gathered',
        rows: 3,
        columns: [
          { column: { id: 'x', name: 'x', label: 'x', kind: 'number' }, cells: [1, 2, null] },
          { column: { id: 'double', name: 'double', label: 'double', kind: 'number', formula: 'x * 2' } },
        ],
      },
    });
  const put = (sheet: string, row: number, cell: number | null): void =>
    change({ do: 'put-cells', sheet, row, columns: ['x'], cells: [[cell]] });
  const values = (formula: string) => {
    const range = calculation.rows(formula, 'sheet');
    return Array.from({ length: range.rows }, (_, row) => valueAt(range, row));
  };
  return { calculation, change, put, values };
}

describe('a formula asked for all rows of a sheet', () => {
  test('answers as a column’s formula would', () => {
    const { values } = made();
    expect(values('double + SUM(sheet.x)')).toEqual([5, 7, 3]);
    expect(values('x > 1')).toEqual([false, true, false]);
    expect(values('ROW()')).toEqual([1, 2, 3]);
    expect(values('MAX(sheet.x)')).toEqual([2, 2, 2]);
    expect(values('"a" & "b"')).toEqual(['ab', 'ab', 'ab']);
    expect(values('1 / 0')).toEqual(Array(3).fill(expect.objectContaining({ code: '#DIV/0!' })));
    expect(new Set(values('RAND()')).size).toBe(3);
    expect(values('nothing + 1')).toEqual(Array(3).fill(expect.objectContaining({ code: '#NAME?' })));
    expect(values('1 +')).toEqual(Array(3).fill(expect.objectContaining({ code: '#ERROR!' })));
  });

  test('answers the same object until something that it reads has changed', () => {
    const { calculation, put } = made();
    const ask = () => calculation.rows('double > 2', 'sheet');
    const first = ask();
    expect(ask()).toBe(first);
    put('other', 0, 9);
    expect(ask()).toBe(first);
    put('sheet', 0, 9);
    expect(ask()).not.toBe(first);
    // What was answered before is not written over.
    expect(valueAt(first, 0)).toBe(false);
    expect(valueAt(ask(), 0)).toBe(true);
  });

  test('answers anew when rows come, when a name means something else, and when it is never the same', () => {
    const { calculation, change, put } = made();
    const rows = calculation.rows('ROW()', 'sheet');
    const named = calculation.rows('x + 0', 'sheet');
    const random = calculation.rows('RAND()', 'sheet');
    change({ do: 'add-rows', sheet: 'sheet', row: 3, count: 1 });
    expect(calculation.rows('ROW()', 'sheet').rows).toBe(rows.rows + 1);
    change({
      do: 'change-column',
      sheet: 'sheet',
      column: { id: 'x', name: 'y', label: 'x', kind: 'number' },
    });
    expect(valueAt(named, 0)).toBe(1);
    expect(valueAt(calculation.rows('x + 0', 'sheet'), 0)).toMatchObject({ code: '#NAME?' });
    put('other', 0, 1);
    expect(calculation.rows('RAND()', 'sheet')).not.toBe(random);
  });

  test('answers nothing for a sheet that is not there', () => {
    expect(made().calculation.rows('1', 'gone').rows).toBe(0);
  });
});
