import type { Cells } from './cells.ts';
import {
  type Book,
  type Column,
  type Json,
  type NamedCell,
  type PartName,
  partNames,
  type Sheet,
} from './model.ts';
import { nameKey } from './names.ts';
import { refuse } from './refusal.ts';

/** A book that edits may change. One object for the whole time it is open; sheets and columns in it are replaced. */
export interface LiveBook extends Book {
  title: string;
  sheets: readonly Sheet[];
  readonly names: Map<string, NamedCell>;
  readonly parts: Readonly<Record<PartName, Map<string, Json>>>;
}

export function createBook(title = 'New book'): LiveBook {
  const parts = Object.fromEntries(partNames.map((part) => [part, new Map<string, Json>()]));
  return { title, sheets: [], names: new Map(), parts: parts as Record<PartName, Map<string, Json>> };
}

export const findSheet = (book: Book, id: string): Sheet | undefined => book.sheets.find((s) => s.id === id);

/** The sheet of this id. @throws Refusal */
export function sheetOf(book: Book, id: string): Sheet {
  const sheet = findSheet(book, id);
  if (!sheet) refuse(`There is no sheet "${id}" in this book.`);
  return sheet;
}

/** The column of this id. @throws Refusal */
export function columnOf(sheet: Sheet, id: string): Column {
  const column = sheet.columns.find((c) => c.id === id);
  if (!column) refuse(`There is no column "${id}" in the sheet "${sheet.name}".`);
  return column;
}

/** The cells of the column of this id. @throws Refusal */
export function cellsOf(sheet: Sheet, id: string): Cells {
  const cells = sheet.cells.get(id);
  if (!cells) refuse(`There is no column "${id}" in the sheet "${sheet.name}".`);
  return cells;
}

export const sheetNamed = (book: Book, name: string): Sheet | undefined =>
  book.sheets.find((s) => nameKey(s.name) === nameKey(name));

export const columnNamed = (sheet: Sheet, name: string): Column | undefined =>
  sheet.columns.find((c) => nameKey(c.name) === nameKey(name));
