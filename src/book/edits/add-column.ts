/** The edit that adds a column; undone by removing it. */
import { type LiveBook, sheetOf } from '../book.ts';
import { Cells } from '../cells.ts';
import type { Applied, EditOf } from '../edit.ts';
import { limits } from '../file-frame.ts';
import { refuse } from '../refusal.ts';
import { checkCells, checkColumn, checkCount } from './limits.ts';
import { checkColumnName, checkIndex, checkRun, inserted, replaceSheet, withColumns } from './shared.ts';

export function addColumn(book: LiveBook, edit: EditOf<'add-column'>): Applied {
  const sheet = sheetOf(book, edit.sheet);
  checkIndex(edit.index, sheet.columns.length, 'column');
  checkColumnName(book, edit.sheet, edit.column, true);
  checkColumn(edit.column);
  checkCount(sheet.columns.length + 1, limits.columns, 'columns in the sheet');
  if (edit.cells || edit.column.formula !== undefined) checkCells(book, sheet.rows);
  if (edit.cells && edit.cells.length > sheet.rows)
    refuse(
      `The sheet "${sheet.name}" has ${sheet.rows} rows; the new column has ${edit.cells.length} cells.`,
    );
  checkRun(edit.cells);
  const cells = new Map(sheet.cells).set(edit.column.id, Cells.from(edit.cells, sheet.rows));
  replaceSheet(book, withColumns(sheet, inserted(sheet.columns, edit.index, edit.column), cells));
  return {
    inverse: { do: 'remove-column', sheet: edit.sheet, column: edit.column.id },
    changes: [{ what: 'columns', sheet: edit.sheet }],
  };
}
