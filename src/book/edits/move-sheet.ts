/** The edit that moves a sheet; undone by moving it back. */
import { type LiveBook, sheetOf } from '../book.ts';
import type { Applied, EditOf } from '../edit.ts';
import { checkIndex, inserted } from './shared.ts';

export function moveSheet(book: LiveBook, edit: EditOf<'move-sheet'>): Applied {
  const sheet = sheetOf(book, edit.sheet);
  const index = book.sheets.indexOf(sheet);
  checkIndex(edit.index, book.sheets.length - 1, 'sheet');
  const others = book.sheets.filter((s) => s !== sheet);
  book.sheets = inserted(others, edit.index, sheet);
  return { inverse: { ...edit, index }, changes: [{ what: 'sheets' }] };
}
