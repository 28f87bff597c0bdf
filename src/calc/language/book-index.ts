import type { Book, Column, NamedCell, Sheet } from '../../book/model.ts';
import { nameKey } from '../../book/names.ts';

/** A sheet with its columns by name. */
export interface SheetIndex {
  readonly sheet: Sheet;
  readonly columns: ReadonlyMap<string, Column>;
}

/** The book's names in any case, made once for each change of its structure. */
export interface BookIndex {
  readonly sheets: ReadonlyMap<string, SheetIndex>;
  readonly sheetsById: ReadonlyMap<string, SheetIndex>;
  readonly names: ReadonlyMap<string, NamedCell>;
}

export function indexBook(book: Book): BookIndex {
  const sheets = new Map<string, SheetIndex>();
  const sheetsById = new Map<string, SheetIndex>();
  for (const sheet of book.sheets) {
    const entry = { sheet, columns: new Map(sheet.columns.map((c) => [nameKey(c.name), c])) };
    sheets.set(nameKey(sheet.name), entry);
    sheetsById.set(sheet.id, entry);
  }
  const names = new Map([...book.names.values()].map((n) => [nameKey(n.name), n]));
  return { sheets, sheetsById, names };
}
