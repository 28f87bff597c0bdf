import { CellKind } from '../book/cells.ts';
import type { Edit } from '../book/edit.ts';
import type { Book } from '../book/model.ts';
import { moveColumns, moveRows } from '../calc/index.ts';
import { rewrittenMarks } from './marks/follow.ts';
import { rewrittenViews } from './sheet-view-follow.ts';

/** Where a formula stands; without a row it is the formula of a whole column. */
export interface Home {
  readonly sheet: string;
  readonly column: string;
  readonly row?: number;
}

/** Answers a formula's new text, the same text when nothing changes. */
export type Rewrite = (formula: string, home: Home) => string;

export interface Rewritten {
  readonly edits: readonly Edit[];
  /** Formulas that changed. */
  readonly count: number;
}

/** Every formula of the book, column formulas and cells' own. */
export function* formulasOf(book: Book): Generator<Home & { readonly formula: string }> {
  for (const sheet of book.sheets)
    for (const column of sheet.columns) {
      const home = { sheet: sheet.id, column: column.id };
      if (column.formula !== undefined) yield { ...home, formula: column.formula };
      const cells = sheet.cells.get(column.id)!;
      for (const [row, formula] of cells.formulas)
        if (cells.kinds[row] === CellKind.formula) yield { ...home, row, formula };
    }
}

/**
 * The edits that rewrite every formula of the book, those of marks and summaries too. They go into the batch before the edit that moves or renames, since
 * they speak of the places as they are now. `skip` leaves out one column's formula, for a command that writes it itself.
 */
export function rewriteFormulas(book: Book, rewrite: Rewrite, skip?: Home): Rewritten {
  const edits: Edit[] = [];
  let count = 0;
  for (const { formula, ...home } of formulasOf(book)) {
    const text = rewrite(formula, home);
    if (text === formula) continue;
    count++;
    const { sheet, column, row } = home;
    if (row !== undefined)
      edits.push({ do: 'put-cells', sheet, row, columns: [column], cells: [[{ formula: text }]] });
    else if (!(skip && skip.sheet === sheet && skip.column === column)) {
      const before = book.sheets.find((s) => s.id === sheet)!.columns.find((c) => c.id === column)!;
      edits.push({ do: 'change-column', sheet, column: { ...before, formula: text } });
    }
  }
  for (const parts of [rewrittenMarks(book, rewrite), rewrittenViews(book, rewrite)]) {
    edits.push(...parts.edits);
    count += parts.count;
  }
  return { edits, count };
}

/** Something like an address stands in the formula: most have none, and need not be read for one. */
const ADDRESS = /(?:^|[^\p{L}\p{N}_.$])\$?[A-Za-z]{1,3}\$?\d/u;

/** Addresses follow rows that go to another place; undefined for a row that goes away. */
export const movedRows =
  (book: Book, sheet: string, to: (row: number) => number | undefined): Rewrite =>
  (formula, home) =>
    ADDRESS.test(formula) ? moveRows(formula, book, home.sheet, sheet, to, home.row === undefined) : formula;

/** Addresses follow columns that go to another place; undefined for a column that goes away. */
export const movedColumns =
  (book: Book, sheet: string, to: (column: number) => number | undefined): Rewrite =>
  (formula, home) =>
    ADDRESS.test(formula) ? moveColumns(formula, book, home.sheet, sheet, to) : formula;
