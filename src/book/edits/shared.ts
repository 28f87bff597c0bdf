/** What edits share: sheets with other rows or columns, and inverses that restore lost names. */
import { type LiveBook, sheetOf } from '../book.ts';
import { CellKind, type CellRun, type Cells, isList } from '../cells.ts';
import type { Change, Edit } from '../edit.ts';
import type { Column, NamedCell, Sheet } from '../model.ts';
import { nameKey } from '../names.ts';
import { refuse } from '../refusal.ts';
import { checkTexts } from './limits.ts';

export function replaceSheet(book: LiveBook, sheet: Sheet): void {
  book.sheets = book.sheets.map((s) => (s.id === sheet.id ? sheet : s));
}

export const withRows = (sheet: Sheet, rows: number): Sheet => ({ ...sheet, rows });

export const withColumns = (
  sheet: Sheet,
  columns: readonly Column[],
  cells: ReadonlyMap<string, Cells> = sheet.cells,
): Sheet => ({ ...sheet, columns, cells });

/** A list with one item put in at a place. */
export const inserted = <T>(list: readonly T[], index: number, item: T): T[] => [
  ...list.slice(0, index),
  item,
  ...list.slice(index),
];

/** Refuses a place that is no whole number from 0 to `most`. */
export function checkIndex(index: number, most: number, what: string): void {
  if (!Number.isInteger(index) || index < 0 || index > most)
    refuse(`There is no ${what} ${index + 1} here; there are ${most}.`);
}

/** Refuses rows that are not there. */
export function checkRows(sheet: Sheet, row: number, count: number): void {
  if (!Number.isInteger(row) || !Number.isInteger(count) || row < 0 || count < 0 || row + count > sheet.rows)
    refuse(
      `The sheet "${sheet.name}" has ${sheet.rows} rows; rows ${row + 1} to ${row + count} are not all there.`,
    );
}

/**
 * Moves the names of a sheet's cells along; `to` answers the new row or undefined when the row goes. Answers the edits
 * that bring lost names back.
 */
export function moveNames(
  book: LiveBook,
  sheet: string,
  to: (named: NamedCell) => number | undefined,
): Moved {
  const lost: Edit[] = [];
  let any = false;
  for (const [key, named] of [...book.names]) {
    if (named.sheet !== sheet) continue;
    const row = to(named);
    if (row === named.row) continue;
    any = true;
    if (row !== undefined) book.names.set(key, { ...named, row });
    else {
      book.names.delete(key);
      const { name, ...target } = named;
      lost.push({ do: 'set-name', name, target });
    }
  }
  return { lost, changes: any ? [{ what: 'names' }] : [] };
}

interface Moved {
  readonly lost: readonly Edit[];
  readonly changes: readonly Change[];
}

/** An inverse that also brings lost names back. */
export const andNames = (inverse: Edit, lost: readonly Edit[]): Edit =>
  lost.length === 0 ? inverse : { do: 'batch', edits: [inverse, ...lost] };

/** Refuses a second sheet of a name or id. */
export function checkSheetName(book: LiveBook, id: string, name: string, isNew: boolean): void {
  for (const sheet of book.sheets) {
    if (isNew && sheet.id === id) refuse(`There is a sheet with the id "${id}" already.`);
    if (sheet.id !== id && nameKey(sheet.name) === nameKey(name))
      refuse(`There is a sheet "${sheet.name}" already.`);
  }
}

/** Refuses a second column of a name or id. */
export function checkColumnName(book: LiveBook, sheetId: string, column: Column, isNew: boolean): void {
  const sheet = sheetOf(book, sheetId);
  for (const other of sheet.columns) {
    if (isNew && other.id === column.id)
      refuse(`There is a column with the id "${column.id}" in the sheet "${sheet.name}" already.`);
    if (other.id !== column.id && nameKey(other.name) === nameKey(column.name))
      refuse(`There is a column "${other.name}" in the sheet "${sheet.name}" already.`);
  }
}

/** Refuses cells that no column can hold: numbers that are not finite, kinds that do not exist. */
export function checkRun(run: CellRun | undefined): void {
  if (!run) return;
  checkTexts(run);
  if (isList(run)) {
    for (const cell of run) {
      const number =
        typeof cell === 'number'
          ? cell
          : cell !== null && typeof cell === 'object' && 'date' in cell
            ? cell.date
            : 0;
      if (!Number.isFinite(number)) refuse(`${number} is not a number that a cell can have.`);
    }
    return;
  }
  const { kinds, numbers, length } = run;
  if (kinds.length !== length || numbers.length !== length)
    refuse('A block of cells is not as long as it says.');
  for (let i = 0; i < length; i++) {
    if (!Number.isFinite(numbers[i])) refuse(`${numbers[i]} is not a number that a cell can have.`);
    if (kinds[i]! > CellKind.held || kinds[i] === CellKind.error)
      refuse(`${kinds[i]} is not a kind of cell.`);
  }
}
