/** The edit that adds rows; undone by removing them. */
import { type LiveBook, sheetOf } from '../book.ts';
import type { Applied, EditOf } from '../edit.ts';
import { limits } from '../file-frame.ts';
import { refuse } from '../refusal.ts';
import { checkCells, checkCount, filledColumns } from './limits.ts';
import { checkIndex, checkRun, moveNames, replaceSheet, withRows } from './shared.ts';

export function addRows(book: LiveBook, edit: EditOf<'add-rows'>): Applied {
  const sheet = sheetOf(book, edit.sheet);
  checkIndex(edit.row, sheet.rows, 'row');
  if (!Number.isInteger(edit.count) || edit.count < 0) refuse(`${edit.count} is not a number of rows.`);
  checkCount(sheet.rows + edit.count, limits.rows, 'rows in the sheet');
  checkCells(book, edit.count * filledColumns(sheet).length);
  if (edit.cells && edit.cells.length > sheet.columns.length)
    refuse(`The sheet "${sheet.name}" has ${sheet.columns.length} columns; ${edit.cells.length} were given.`);
  if (edit.cells?.some((run) => run.length > edit.count))
    refuse('A column has more cells than there are new rows.');
  for (const run of edit.cells ?? []) checkRun(run);
  sheet.columns.forEach((column, k) => {
    sheet.cells.get(column.id)!.insert(edit.row, edit.count, edit.cells?.[k]);
  });
  replaceSheet(book, withRows(sheet, sheet.rows + edit.count));
  const names = moveNames(book, sheet.id, ({ row }) => (row < edit.row ? row : row + edit.count));
  return {
    inverse: { do: 'remove-rows', sheet: edit.sheet, row: edit.row, count: edit.count },
    changes: [{ what: 'rows', sheet: edit.sheet, from: edit.row }, ...names.changes],
  };
}
