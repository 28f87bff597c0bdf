/** The edit that removes rows; undone by adding them with their cells. */
import { type LiveBook, sheetOf } from '../book.ts';
import type { Applied, EditOf } from '../edit.ts';
import { andNames, checkRows, moveNames, replaceSheet, withRows } from './shared.ts';

export function removeRows(book: LiveBook, edit: EditOf<'remove-rows'>): Applied {
  const { row, count } = edit;
  const sheet = sheetOf(book, edit.sheet);
  checkRows(sheet, row, count);
  const cells = sheet.columns.map((column) => {
    const of = sheet.cells.get(column.id)!;
    const gone = of.blank ? [] : of.block(row, row + count);
    of.remove(row, count);
    return gone;
  });
  replaceSheet(book, withRows(sheet, sheet.rows - count));
  const names = moveNames(book, sheet.id, (named) =>
    named.row < row ? named.row : named.row < row + count ? undefined : named.row - count,
  );
  return {
    inverse: andNames({ do: 'add-rows', sheet: edit.sheet, row, count, cells }, names.lost),
    changes: [{ what: 'rows', sheet: edit.sheet, from: row }, ...names.changes],
  };
}
