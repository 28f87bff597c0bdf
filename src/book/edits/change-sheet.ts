/** The edit that changes what a sheet is; undone by what it was. */
import { type LiveBook, sheetOf } from '../book.ts';
import type { Applied, EditOf } from '../edit.ts';
import { checkSheet } from './limits.ts';
import { checkSheetName, replaceSheet } from './shared.ts';

export function changeSheet(book: LiveBook, edit: EditOf<'change-sheet'>): Applied {
  const before = sheetOf(book, edit.sheet);
  checkSheetName(book, edit.sheet, edit.name, false);
  checkSheet({ ...edit, id: before.id, rows: before.rows });
  const { note: _, ...rest } = before;
  const { do: __, sheet: ___, ...to } = edit;
  replaceSheet(book, { ...rest, ...to });
  const { name, label, purpose, note } = before;
  return {
    inverse: {
      do: 'change-sheet',
      sheet: edit.sheet,
      name,
      label,
      purpose,
      ...(note === undefined ? {} : { note }),
    },
    changes: [{ what: 'sheets' }],
  };
}
