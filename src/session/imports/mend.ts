import type { Book, Json } from '../../book/model.ts';
import { nameKey } from '../../book/names.ts';
import { Refusal } from '../../book/refusal.ts';
import {
  importing,
  mendedRows,
  type Progress,
  type Provenance,
  readRecipe,
  sentence,
} from '../../intake/index.ts';
import { oneLineEnd } from '../../intake/read/index.ts';
import { plausibility } from '../checks/plausibility.ts';
import { importFrom } from './imports.ts';
import { type Prepared, reservedIn } from './prepare-import.ts';

/** A held row as somebody mended it. */
export interface MendedRow {
  /** Among the import's held rows. */
  readonly index: number;
  readonly text: string;
}

/**
 * Reads held rows of an import again, as they were mended, by the recipe they came with. Those that fit now are placed
 * and leave the held rows; the others stay held, as they now read.
 * @throws Refusal when the book no longer has what they belong to
 * @throws IntakeRefusal
 */
export function* mending(
  { current: book }: { readonly current: Book },
  key: string,
  rows: readonly MendedRow[],
  now: string,
): Generator<Progress, Prepared> {
  const json = book.parts.provenance.get(key);
  const before = importFrom(key, json);
  const sheet = book.sheets.find(({ name }) => before && nameKey(name) === nameKey(before.sheet));
  const recipeJson = before?.recipeKey && book.parts.recipes.get(before.recipeKey);
  if (!before || !sheet || !recipeJson)
    throw new Refusal(
      'The import settings or the sheet of these rows are no longer in the book. Copy the rows and import them as a file.',
    );
  const recipe = readRecipe(recipeJson, before.recipeKey);
  const { bytes, options } = mendedRows(
    rows.map(({ text }) => text),
    json as unknown as Pick<Provenance, 'reading'>,
  );
  const imported = yield* importing(
    bytes,
    { sheet, book },
    {
      ...options,
      recipe,
      name: before.file,
      now,
      mode: recipe.mode === 'update' ? 'update' : 'append',
      // Somebody mended the row: it is not dropped because the sheet has it with other values.
      ofDiffering: recipe.ofDiffering === 'add' ? 'add' : 'hold',
      plausibility: plausibility(),
      reserved: reservedIn(book),
    },
  );
  const still = new Map(imported.heldRows.map((row) => [row.line, row]));
  const lineOf = linesOf(rows, bytes);
  const heldRows = before.heldRows.flatMap((row, index) => {
    const mended = rows.findIndex((one) => one.index === index);
    if (mended < 0) return [row];
    const held = still.get(lineOf[mended]!);
    return held ? [{ line: row.line, raw: rows[mended]!.text, reason: sentence(held.reason) }] : [];
  });
  const { report } = imported;
  const add = (what: 'placed' | 'added' | 'updated' | 'unchanged' | 'left') =>
    before.rows[what] + report.rows[what];
  const value = {
    ...(json as { readonly [key: string]: Json }),
    heldRows,
    cells: {
      filled: before.cells.filled + report.cells.filled,
      held: before.cells.held + report.cells.held,
    },
    rows: {
      in: add('placed') + heldRows.length,
      placed: add('placed'),
      held: heldRows.length,
      added: add('added'),
      updated: add('updated'),
      unchanged: add('unchanged'),
      left: add('left'),
    },
  };
  return {
    imported,
    edit: {
      do: 'batch',
      edits: [...imported.edits, { do: 'set-part', part: 'provenance', key, value }],
    },
    words: `Import fixed rows of ${before.file}`,
  };
}

/** The line of the made file on which each row begins; a row may take several. */
function linesOf(rows: readonly MendedRow[], bytes: Uint8Array): readonly number[] {
  const all = new TextDecoder().decode(bytes).split('\n').length - 1;
  const lengths = rows.map(({ text }) => oneLineEnd(text).split('\n').length);
  let line = all - lengths.reduce((sum, n) => sum + n, 0) + 1;
  return lengths.map((n) => {
    const at = line;
    line += n;
    return at;
  });
}
