/** The edit that changes what a column is; undone by what it was. */
import { columnOf, type LiveBook, sheetOf } from '../book.ts';
import type { Applied, EditOf } from '../edit.ts';
import { checkCells, checkColumn, filledColumns } from './limits.ts';
import { checkColumnName, replaceSheet, withColumns } from './shared.ts';

export function changeColumn(book: LiveBook, edit: EditOf<'change-column'>): Applied {
  const sheet = sheetOf(book, edit.sheet);
  const before = columnOf(sheet, edit.column.id);
  checkColumnName(book, edit.sheet, edit.column, false);
  checkColumn(edit.column);
  if (edit.column.formula !== undefined && !filledColumns(sheet).includes(before))
    checkCells(book, sheet.rows);
  replaceSheet(
    book,
    withColumns(
      sheet,
      sheet.columns.map((c) => (c === before ? edit.column : c)),
    ),
  );
  return { inverse: { ...edit, column: before }, changes: [{ what: 'columns', sheet: edit.sheet }] };
}
