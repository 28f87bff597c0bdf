import { applyEdit } from '../../src/book/apply.ts';
import { createBook, type LiveBook, sheetNamed } from '../../src/book/book.ts';
import type { Cell, CellRun } from '../../src/book/cells.ts';
import type { Column, Sheet } from '../../src/book/model.ts';
import { type Imported, type ImportOptions, IntakeRefusal, sentence } from '../../src/intake/index.ts';
import { importFile } from './at-once.ts';

export const bytesOf = (text: string): Uint8Array<ArrayBuffer> => new TextEncoder().encode(text);

type Given = Omit<Column, 'id' | 'label'> & { readonly label?: string };

/** Adds a sheet with these columns and cells to a book. */
export function addSheet(
  book: LiveBook,
  name: string,
  columns: readonly (readonly [Given, CellRun?])[],
): Sheet {
  const rows = Math.max(0, ...columns.map(([, cells]) => cells?.length ?? 0));
  applyEdit(book, {
    do: 'add-sheet',
    index: book.sheets.length,
    sheet: {
      id: name,
      name,
      label: name,
      purpose: 'gathered',
      rows,
      columns: columns.map(([column, cells]) => ({
        column: { id: column.name, label: column.name, ...column },
        ...(cells ? { cells } : {}),
      })),
    },
  });
  return sheetNamed(book, name)!;
}

export const newBook = createBook;

/** Brings a text into a sheet of the book and writes it there. */
export function bring(book: LiveBook, sheet: string, text: string, options: ImportOptions = {}): Imported {
  const imported = importFile(bytesOf(text), { sheet: sheetNamed(book, sheet)!, book }, options);
  applyEdit(book, { do: 'batch', edits: imported.edits });
  return imported;
}

/** A column's cells from top to bottom. */
export function column(book: LiveBook, sheet: string, name: string): Cell[] {
  const found = sheetNamed(book, sheet)!;
  const cells = found.cells.get(found.columns.find((c) => c.name === name)!.id)!;
  return Array.from({ length: found.rows }, (_, row) => cells.get(row));
}

export const wordsOf = (imported: Imported): string[] => imported.report.notes.map(sentence);

/** The reason why something was refused. */
export function refusal(run: () => unknown): string {
  try {
    run();
  } catch (error) {
    if (error instanceof IntakeRefusal) return error.message;
    throw error;
  }
  throw new Error('Nothing was refused.');
}
