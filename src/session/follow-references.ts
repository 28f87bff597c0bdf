/** Every structural command asks this one function what else in the book has to change with it. */

import { CellKind } from '../book/cells.ts';
import type { Edit } from '../book/edit.ts';
import type { Book } from '../book/model.ts';
import type { BookChange } from '../book/references/change.ts';
import { followParts } from '../book/references/follow.ts';
import {
  loseColumn,
  loseNamed,
  loseSheet,
  moveColumns,
  moveRows,
  renameColumn,
  renameNamed,
  renameSheet,
} from '../calc/index.ts';
import { bookParts } from './book-parts.ts';

/** Where a formula is; without a row it is the formula of a whole column. */
interface Home {
  readonly sheet: string;
  readonly column: string;
  readonly row?: number;
}

/** What follows a change. */
export interface Following {
  /** They go into the batch before the edit that changes the book: they speak of it as it is. */
  readonly edits: readonly Edit[];
  /** Formulas that name what changed, in columns, cells and parts. */
  readonly formulas: number;
  /** What the book calls the records that changed: a word for each. */
  readonly parts: readonly string[];
}

/**
 * The edits with which everything in a book follows a change: formulas of columns and cells, and every part that names
 * a column, a sheet or a named cell. `skip` leaves out the formula of a column that the command writes itself.
 */
export function followReferences(
  book: Book,
  change: BookChange,
  skip?: { readonly sheet: string; readonly column: string },
): Following {
  const { rewrite, names, inCopy } = followingFormulas(book, change);
  const edits: Edit[] = [];
  let count = 0;
  const follow = (formula: string, home: string, ofColumn: boolean): string => {
    const text = rewrite(formula, home, ofColumn);
    if (text !== formula && names(formula, home)) count++;
    return text;
  };
  for (const { formula, ...home } of formulasOf(book)) {
    const { sheet, column, row } = home;
    const text = follow(formula, sheet, row === undefined);
    if (text === formula) continue;
    if (row !== undefined)
      edits.push({ do: 'put-cells', sheet, row, columns: [column], cells: [[{ formula: text }]] });
    else if (!(skip && skip.sheet === sheet && skip.column === column)) {
      const before = book.sheets.find((s) => s.id === sheet)!.columns.find((c) => c.id === column)!;
      edits.push({ do: 'change-column', sheet, column: { ...before, formula: text } });
    }
  }
  const parts = followParts(book, bookParts, change, {
    formula: (formula, home) => follow(formula, home, false),
    inCopy,
  });
  return { edits: [...edits, ...parts.edits], formulas: count, parts: parts.words };
}

/** Every formula of the book's sheets, column formulas and cells' own. */
function* formulasOf(book: Book): Generator<Home & { readonly formula: string }> {
  for (const sheet of book.sheets)
    for (const column of sheet.columns) {
      const home = { sheet: sheet.id, column: column.id };
      if (column.formula !== undefined) yield { ...home, formula: column.formula };
      const cells = sheet.cells.get(column.id)!;
      for (const [row, formula] of cells.formulas)
        if (cells.kinds[row] === CellKind.formula) yield { ...home, row, formula };
    }
}

/** Something like an address stands in the formula: most have none, and need not be read for one. */
const ADDRESS = /(?:^|[^\p{L}\p{N}_.$])\$?[A-Za-z]{1,3}\$?\d/u;

interface FormulasFollowing {
  /** The formula after the change; `ofColumn` for the formula of a whole column. */
  readonly rewrite: (formula: string, home: string, ofColumn: boolean) => string;
  /** True where the formula names what changed, and does not only have addresses that shift. */
  readonly names: (formula: string, home: string) => boolean;
  readonly inCopy: (formula: string) => string;
}

const always = (): boolean => true;
const asItIs = (formula: string): string => formula;

function followingFormulas(book: Book, change: BookChange): FormulasFollowing {
  const plain = (rewrite: FormulasFollowing['rewrite']): FormulasFollowing => ({
    rewrite,
    names: always,
    inCopy: asItIs,
  });
  const moved = (formula: string, home: string): string =>
    'letters' in change && ADDRESS.test(formula)
      ? moveColumns(formula, book, home, change.sheet, change.letters)
      : formula;
  switch (change.is) {
    case 'rename-column':
      return plain((f, home) => renameColumn(f, book, home, change.sheet, change.column, change.to));
    case 'remove-column': {
      const lose = (f: string, home: string) => loseColumn(f, book, home, change.sheet, change.column);
      return {
        rewrite: (f, home) => lose(moved(f, home), home),
        names: (f, home) => lose(f, home) !== f,
        inCopy: asItIs,
      };
    }
    case 'copy-column': {
      const { sheet, column, name } = change;
      return {
        rewrite: moved,
        names: always,
        inCopy: (f) => renameColumn(moved(f, sheet), book, sheet, sheet, column, name),
      };
    }
    case 'move-columns':
      return plain(moved);
    case 'move-rows':
      return plain((f, home, ofColumn) =>
        ADDRESS.test(f) ? moveRows(f, book, home, change.sheet, change.rows, ofColumn) : f,
      );
    case 'rename-sheet':
      return plain((f, home) => renameSheet(f, book, home, change.sheet, change.to));
    case 'remove-sheet':
      return plain((f, home) => (home === change.sheet ? f : loseSheet(f, book, home, change.sheet)));
    case 'copy-sheet': {
      const { sheet, name } = change;
      return { ...plain(asItIs), inCopy: (f) => renameSheet(f, book, sheet, sheet, name) };
    }
    case 'rename-cell':
      return plain((f, home) => renameNamed(f, book, home, change.name, change.to));
    case 'remove-cell':
      return plain((f, home) => loseNamed(f, book, home, change.name));
  }
}
