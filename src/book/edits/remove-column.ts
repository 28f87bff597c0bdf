/** The edit that removes a column; undone by adding it with its cells. */
import { cellsOf, columnOf, type LiveBook, sheetOf } from '../book.ts';
import type { Applied, EditOf } from '../edit.ts';
import { andNames, moveNames, replaceSheet, withColumns } from './shared.ts';

export function removeColumn(book: LiveBook, edit: EditOf<'remove-column'>): Applied {
  const sheet = sheetOf(book, edit.sheet);
  const column = columnOf(sheet, edit.column);
  const gone = cellsOf(sheet, column.id);
  const cells = new Map(sheet.cells);
  cells.delete(column.id);
  replaceSheet(
    book,
    withColumns(
      sheet,
      sheet.columns.filter((c) => c !== column),
      cells,
    ),
  );
  const names = moveNames(book, sheet.id, (named) => (named.column === column.id ? undefined : named.row));
  return {
    inverse: andNames(
      {
        do: 'add-column',
        sheet: edit.sheet,
        index: sheet.columns.indexOf(column),
        column,
        ...(gone.blank ? {} : { cells: gone.block() }),
      },
      names.lost,
    ),
    changes: [{ what: 'columns', sheet: edit.sheet }, ...names.changes],
  };
}
