/** The edit that removes a sheet; undone by adding it with all that it has. */
import { type LiveBook, sheetOf } from '../book.ts';
import type { Applied, EditOf, SheetContent } from '../edit.ts';
import type { Sheet } from '../model.ts';
import { andNames, moveNames } from './shared.ts';

export function removeSheet(book: LiveBook, edit: EditOf<'remove-sheet'>): Applied {
  const sheet = sheetOf(book, edit.sheet);
  const index = book.sheets.indexOf(sheet);
  book.sheets = book.sheets.filter((s) => s !== sheet);
  const names = moveNames(book, sheet.id, () => undefined);
  return {
    inverse: andNames({ do: 'add-sheet', index, sheet: contentOf(sheet) }, names.lost),
    changes: [{ what: 'sheets' }, ...names.changes],
  };
}

/** A sheet as an edit carries it. */
export function contentOf(sheet: Sheet): SheetContent {
  const { cells, columns, ...rest } = sheet;
  return {
    ...rest,
    columns: columns.map((column) => {
      const of = cells.get(column.id)!;
      return of.blank ? { column } : { column, cells: of.block() };
    }),
  };
}
