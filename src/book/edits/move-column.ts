/** The edit that moves a column; undone by moving it back. */
import { columnOf, type LiveBook, sheetOf } from '../book.ts';
import type { Applied, EditOf } from '../edit.ts';
import { checkIndex, inserted, replaceSheet, withColumns } from './shared.ts';

export function moveColumn(book: LiveBook, edit: EditOf<'move-column'>): Applied {
  const sheet = sheetOf(book, edit.sheet);
  const column = columnOf(sheet, edit.column);
  checkIndex(edit.index, sheet.columns.length - 1, 'column');
  const others = sheet.columns.filter((c) => c !== column);
  replaceSheet(book, withColumns(sheet, inserted(others, edit.index, column)));
  return {
    inverse: { ...edit, index: sheet.columns.indexOf(column) },
    changes: [{ what: 'columns', sheet: edit.sheet }],
  };
}
