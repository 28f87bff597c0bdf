import type { CellRun } from './cells.ts';
import type { Column, Json, NamedCell, PartName, Purpose } from './model.ts';

/** A sheet with its cells, as an edit carries it. */
export interface SheetContent {
  readonly id: string;
  readonly name: string;
  readonly label: string;
  readonly purpose: Purpose;
  readonly note?: string;
  readonly rows: number;
  readonly columns: readonly { readonly column: Column; readonly cells?: CellRun }[];
}

/**
 * The smallest things that can happen to a book. Each has an inverse of the same kind of record; the journal stores
 * them; a user's command is a batch of them. Sheets and columns go by id, rows by index from 0. Formulas are texts here:
 * whoever moves or renames something puts the rewritten formulas into the same batch. Named cells follow their cell by
 * themselves. A run of cells that is shorter than its place leaves the rest blank.
 */
export type Edit =
  /** Writes a block: `cells[k]` down from `row` in `columns[k]`. */
  | {
      readonly do: 'put-cells';
      readonly sheet: string;
      readonly row: number;
      readonly columns: readonly string[];
      readonly cells: readonly CellRun[];
    }
  /** `cells[k]` are the new rows of column k of the sheet; without `cells` they are blank. */
  | {
      readonly do: 'add-rows';
      readonly sheet: string;
      readonly row: number;
      readonly count: number;
      readonly cells?: readonly CellRun[];
    }
  | { readonly do: 'remove-rows'; readonly sheet: string; readonly row: number; readonly count: number }
  /** New row i is old row `order[i]`. */
  | { readonly do: 'order-rows'; readonly sheet: string; readonly order: ArrayLike<number> }
  | {
      readonly do: 'add-column';
      readonly sheet: string;
      readonly index: number;
      readonly column: Column;
      readonly cells?: CellRun;
    }
  | { readonly do: 'remove-column'; readonly sheet: string; readonly column: string }
  | { readonly do: 'move-column'; readonly sheet: string; readonly column: string; readonly index: number }
  /** Replaces everything about the column but its cells; the id stays. */
  | { readonly do: 'change-column'; readonly sheet: string; readonly column: Column }
  | { readonly do: 'add-sheet'; readonly index: number; readonly sheet: SheetContent }
  | { readonly do: 'remove-sheet'; readonly sheet: string }
  | { readonly do: 'move-sheet'; readonly sheet: string; readonly index: number }
  | {
      readonly do: 'change-sheet';
      readonly sheet: string;
      readonly name: string;
      readonly label: string;
      readonly purpose: Purpose;
      readonly note?: string;
    }
  | { readonly do: 'set-name'; readonly name: string; readonly target: Omit<NamedCell, 'name'> | null }
  | { readonly do: 'set-part'; readonly part: PartName; readonly key: string; readonly value: Json | null }
  | { readonly do: 'set-title'; readonly title: string }
  | { readonly do: 'batch'; readonly edits: readonly Edit[] };

/** What an edit touched, for whoever keeps something derived from the book. Rows are [from, to). */
export type Change =
  | {
      readonly what: 'cells';
      readonly sheet: string;
      readonly column: string;
      readonly from: number;
      readonly to: number;
    }
  /** Rows came, went or changed places: everything of the sheet from row `from` on. */
  | { readonly what: 'rows'; readonly sheet: string; readonly from: number }
  /** Columns came, went, moved or changed. */
  | { readonly what: 'columns'; readonly sheet: string }
  | { readonly what: 'sheets' }
  | { readonly what: 'names' }
  | { readonly what: 'part'; readonly part: PartName };

/** One edit of a given sort. */
export type EditOf<K extends Edit['do']> = Extract<Edit, { readonly do: K }>;

/** What came of an edit: the edit that takes it back, and what it touched. */
export interface Applied {
  readonly inverse: Edit;
  readonly changes: readonly Change[];
}
