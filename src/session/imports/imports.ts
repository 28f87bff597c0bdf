/** The files that were imported into a sheet, and the rows that were not. */
import type { Book, Json } from '../../book/model.ts';
import { nameKey } from '../../book/names.ts';
import { definePart } from '../../book/references/part.ts';
import { z } from '../../book/zod.ts';

const count = z.number().int().min(0);
const heldRow = z.object({ line: count, raw: z.string(), reason: z.string() });

/** What the book keeps of an import, as far as it is shown; further parts are left as they are. */
const kept = z.object({
  file: z.string(),
  size: count,
  hash: z.string(),
  time: z.string(),
  sheet: z.string(),
  recipe: z.string().nullable(),
  recipeKey: z.string().optional(),
  mode: z.enum(['append', 'replace', 'update']),
  rows: z.object({
    in: count,
    placed: count,
    held: count,
    added: count,
    updated: count,
    unchanged: count,
    left: count.default(0),
  }),
  cells: z.object({ filled: count, held: count }),
  heldRows: z.array(heldRow),
  apart: z.array(z.object({ line: count, raw: z.string(), as: z.enum(['preamble', 'footer']) })),
});

/** A record of an import is told by its file and its sheet; what else it says of the file is kept as it came. */
export const provenancePart = definePart({
  word: 'record of an import',
  part: 'provenance',
  schema: z.looseObject({ sheet: z.string() }),
  references: (record, { sheets }) => ({ ...record, sheet: sheets.named(record.sheet) }),
});

/** One file that came into a sheet. */
export type Import = z.infer<typeof kept> & {
  /** Under which the book keeps it. */
  readonly key: string;
};

/** The files that came into a sheet, the latest first. What cannot be read is left out: a book file may hold anything. */
export function importsOf({ parts, sheets }: Book, sheet: string): readonly Import[] {
  const name = sheets.find(({ id }) => id === sheet)?.name;
  return [...parts.provenance]
    .flatMap(([key, json]) => importFrom(key, json) ?? [])
    .filter((one) => name !== undefined && nameKey(one.sheet) === nameKey(name))
    .sort((a, b) => b.time.localeCompare(a.time));
}

export function importFrom(key: string, json: Json | undefined): Import | undefined {
  const read = kept.safeParse(json);
  return read.success ? { ...read.data, key } : undefined;
}

/**
 * The rows of a sheet that did not come from a file of this name, and would be lost if it replaced them; null where there
 * are none.
 */
export function replacing(
  book: Book,
  id: string | null,
  file: string,
): { readonly rows: number; readonly files: readonly string[] } | null {
  const rows = book.sheets.find((sheet) => sheet.id === id)?.rows ?? 0;
  if (id === null || rows === 0) return null;
  const imports = importsOf(book, id);
  // What came before a file that replaced all rows is gone.
  const last = imports.findIndex(({ mode }) => mode === 'replace');
  const files = [...new Set((last < 0 ? imports : imports.slice(0, last + 1)).map((one) => one.file))];
  const others = files.filter((one) => one !== file);
  return files.length > 0 && others.length === 0 ? null : { rows, files: others };
}

/** What is said about it below the sheet. */
export interface CameFrom {
  readonly files: number;
  readonly file: string;
  readonly time: string;
  readonly heldRows: number;
}

/** Where a sheet's rows came from, in short; null where no file came in. */
export function cameFrom(book: Book, sheet: string): CameFrom | null {
  if (book.parts.provenance.size === 0) return null;
  const imports = importsOf(book, sheet);
  const [last] = imports;
  if (!last) return null;
  const heldRows = imports.reduce((sum, one) => sum + one.heldRows.length, 0);
  return { files: imports.length, file: last.file, time: last.time, heldRows };
}
