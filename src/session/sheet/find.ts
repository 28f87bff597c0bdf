/** Finds a text in the cells of a book. */
import { columnOf, sheetOf } from '../../book/book.ts';
import { CellKind } from '../../book/cells.ts';
import { z } from '../../book/zod.ts';
import type { Place, Progress } from '../../calc/api.ts';
import type { ReadContext } from '../open-book.ts';
import { cellWriter } from '../text/cell-text.ts';

export const searchSchema = z.strictObject({
  text: z.string().min(1).max(1_000),
  /** Only in this sheet, only in these columns of it. */
  sheet: z.string().optional(),
  columns: z.array(z.string()).optional(),
  matchCase: z.boolean().optional(),
  /** The cell holds nothing else. */
  whole: z.boolean().optional(),
  /** Looks into own formulas instead of what they show. */
  formulas: z.boolean().optional(),
  most: z.int().min(1).max(10_000).optional(),
});
export type Search = z.infer<typeof searchSchema>;

export interface Found {
  readonly places: readonly Required<Place>[];
  /** There are more than were asked for. */
  readonly more: boolean;
}

/** True for a text that a search looks for. */
export function matcher({
  text,
  matchCase = false,
  whole = false,
}: Omit<Search, 'sheet'>): (shown: string) => boolean {
  const fold = (s: string): string => (matchCase ? s : s.toLowerCase());
  const wanted = fold(text);
  return (shown) => (whole ? fold(shown) === wanted : fold(shown).includes(wanted));
}

const STEP = 5_000;

/** Finds cells by what they show, sheet by sheet, row by row, step by step. */
export function* finding(context: ReadContext, search: Search): Generator<Progress, Found> {
  const { most = 1_000, formulas = false } = search;
  const matches = matcher(search);
  const sheets = search.sheet === undefined ? context.book.sheets : [sheetOf(context.book, search.sheet)];
  const total = sheets.reduce((all, sheet) => all + sheet.rows, 0);
  const places: Required<Place>[] = [];
  let done = 0;
  for (const sheet of sheets) {
    const chosen = search.columns?.map((id) => columnOf(sheet, id)) ?? sheet.columns;
    const columns = chosen.map((column) => ({
      id: column.id,
      cells: sheet.cells.get(column.id)!,
      write: cellWriter(context, sheet, column),
    }));
    for (let row = 0; row < sheet.rows; row++) {
      if (row % STEP === STEP - 1) yield { done: done + row, total, about: `looking through ${sheet.label}` };
      for (const { id, cells, write } of columns) {
        const own = cells.kinds[row];
        const shown = formulas && own === CellKind.formula ? `=${cells.formulas.get(row)}` : write(row);
        if (shown === '' || !matches(shown)) continue;
        if (places.length === most) return { places, more: true };
        places.push({ sheet: sheet.id, column: id, row });
      }
    }
    done += sheet.rows;
  }
  return { places, more: false };
}
