import { columnNamed, sheetNamed } from '../../book/book.ts';
import type { Edit } from '../../book/edit.ts';
import type { Book, Column, Sheet } from '../../book/model.ts';
import { nameKey, nameProblem, properName } from '../../book/names.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import type { State } from './define.ts';

export const sheetId = z.string();
export const columnId = z.string();
export const row = z.int().min(0);
export const count = z.int().min(1);

/** Edits as one; a single one stays itself. */
export const together = (edits: readonly Edit[]): Edit =>
  edits.length === 1 ? edits[0]! : { do: 'batch', edits };

export const plural = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;

/** "row 3", "rows 3–7", for words; rows count from 1 there. */
export const rowsInWords = (from: number, many: number): string =>
  many === 1 ? `row ${from + 1}` : `rows ${from + 1}–${from + many}`;

/** "femur of row 3", "femur and tibia of rows 3–7", "5 columns of row 3". */
export function cellsInWords(columns: readonly Column[], from: number, many: number): string {
  const names = columns.map((c) => c.label || c.name);
  const what = names.length > 2 ? plural(names.length, 'column') : names.join(' and ');
  return `${what} of ${rowsInWords(from, many)}`;
}

/** The columns from the one named to as many to the right as asked. */
export function columnsById(sheet: Sheet, ids: readonly string[]): Column[] {
  return ids.map(
    (id) =>
      sheet.columns.find((c) => c.id === id) ??
      refuse(`There is no column "${id}" in the sheet "${sheet.name}".`),
  );
}

/** An id for something new: its name, or the name with a figure when that id is taken. */
export const newId = (name: string, taken: (id: string) => boolean): string => {
  if (!taken(name)) return name;
  for (let i = 2; ; i++) if (!taken(`${name}_${i}`)) return `${name}_${i}`;
};

const isNamedCell = (book: Book, name: string): boolean => book.names.has(nameKey(name));
const isColumn = (book: Book, name: string): Sheet | undefined =>
  book.sheets.find((sheet) => columnNamed(sheet, name) !== undefined);

function checkName(state: State, name: string): void {
  const problem = nameProblem(name);
  if (problem) refuse(problem);
  if (state.reserved(name)) refuse(`"${name}" is a function. ${proposal(name, (n) => state.reserved(n))}`);
}

const proposal = (name: string, taken: (name: string) => boolean): string =>
  `"${properName(`${name}_1`, taken)}" would do.`;

/** Refuses a name that a column cannot have. `self`: the column that is being renamed. */
export function checkColumnName(state: State, sheet: Sheet, name: string, self?: string): void {
  checkName(state, name);
  const other = columnNamed(sheet, name);
  if (other && other.id !== self)
    refuse(
      `The sheet "${sheet.name}" has a column "${other.name}" already. ${proposal(name, columnTaken(state, sheet))}`,
    );
  if (isNamedCell(state.book, name))
    refuse(
      `"${name}" is the name of a cell; in formulas it would mean two things. ${proposal(name, columnTaken(state, sheet))}`,
    );
}

/** Refuses a name that a sheet cannot have. */
export function checkSheetName(state: State, name: string, self?: string): void {
  checkName(state, name);
  const other = sheetNamed(state.book, name);
  if (other && other.id !== self)
    refuse(`There is a sheet "${other.name}" already. ${proposal(name, sheetTaken(state))}`);
}

/** Refuses a name that a cell cannot have. */
export function checkCellName(state: State, name: string, self?: string): void {
  checkName(state, name);
  const taken = (n: string) =>
    isNamedCell(state.book, n) || isColumn(state.book, n) !== undefined || state.reserved(n);
  const sheet = isColumn(state.book, name);
  if (sheet)
    refuse(
      `"${name}" is a column of the sheet "${sheet.name}"; in formulas it would mean two things. ${proposal(name, taken)}`,
    );
  if (isNamedCell(state.book, name) && nameKey(name) !== nameKey(self ?? ''))
    refuse(`There is a cell named "${name}" already. ${proposal(name, taken)}`);
}

export const columnTaken =
  (state: State, sheet: Pick<Sheet, 'columns'>) =>
  (name: string): boolean =>
    sheet.columns.some((c) => nameKey(c.name) === nameKey(name)) ||
    isNamedCell(state.book, name) ||
    state.reserved(name);

export const sheetTaken =
  (state: State) =>
  (name: string): boolean =>
    sheetNamed(state.book, name) !== undefined || state.reserved(name);

/** A formula as kept: without the "=" in front and the blanks around. */
export const bareFormula = (text: string): string => text.trim().replace(/^=\s*/, '').trim();
