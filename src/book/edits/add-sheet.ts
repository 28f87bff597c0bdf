/** The edit that adds a sheet; undone by removing it. */
import type { LiveBook } from '../book.ts';
import { Cells } from '../cells.ts';
import type { Applied, EditOf } from '../edit.ts';
import { limits } from '../file-frame.ts';
import { nameKey } from '../names.ts';
import { refuse } from '../refusal.ts';
import { checkCells, checkColumn, checkCount, checkSheet, filledColumns } from './limits.ts';
import { checkIndex, checkRun, checkSheetName, inserted } from './shared.ts';

export function addSheet(book: LiveBook, edit: EditOf<'add-sheet'>): Applied {
  const { columns, ...sheet } = edit.sheet;
  checkIndex(edit.index, book.sheets.length, 'sheet');
  checkSheetName(book, sheet.id, sheet.name, true);
  for (const of of [columns.map((c) => c.column.id), columns.map((c) => nameKey(c.column.name))])
    if (new Set(of).size !== columns.length)
      refuse(`Two columns of the sheet "${sheet.name}" have the same name.`);
  checkSheet(sheet);
  checkCount(book.sheets.length + 1, limits.sheets, 'sheets');
  checkCount(columns.length, limits.columns, 'columns in the sheet');
  for (const { column, cells } of columns) {
    checkColumn(column);
    checkRun(cells);
  }
  const cells = new Map(columns.map(({ column, cells }) => [column.id, Cells.from(cells, sheet.rows)]));
  checkCells(
    book,
    sheet.rows * filledColumns({ columns: columns.map(({ column }) => column), cells }).length,
  );
  const added = { ...sheet, columns: columns.map((c) => c.column), cells };
  book.sheets = inserted(book.sheets, edit.index, added);
  return { inverse: { do: 'remove-sheet', sheet: sheet.id }, changes: [{ what: 'sheets' }] };
}
