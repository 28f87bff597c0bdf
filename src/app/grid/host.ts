import type { ColumnOutline, SheetOutline, Tile } from '../../session/api.ts';
import type { Lines, Run } from './rows.ts';

/** One figure of a line of summaries. */
export interface SummaryText {
  readonly text: string;
  /** Which figure it is, where the line does not say so: stands small before it. */
  readonly what?: string;
  /** More to be read at it. */
  readonly about?: string;
  readonly wrong?: boolean;
}

/** What the grid shows: a sheet, which of its rows in which order, and the lines of summaries. */
export interface Shown {
  readonly sheet: SheetOutline;
  /** The version of the book that it is shown at. */
  readonly version: number;
  readonly lines: Lines;
  /** What each summary line shows, by column id. */
  readonly summaries: readonly Readonly<Record<string, SummaryText>>[];
  /** Shown columns at the start that stay in view. */
  readonly frozen: number;
}

/** What is chosen in a sheet. Columns by id in sheet order. */
export interface GridSelection {
  readonly sheet: string;
  /** What was chosen: cells, or whole columns or rows by their headings. */
  readonly what: 'cells' | 'columns' | 'rows' | 'all';
  /** The sheet row that typing goes to; the number of rows for the blank one after the last. */
  readonly row: number;
  readonly column: string;
  readonly columns: readonly string[];
  /** The chosen sheet rows, in the order shown. */
  readonly runs: readonly Run[];
  /** How many rows that is. */
  readonly rows: number;
}

/** A block of texts that was typed or pasted, and the sheet rows that its lines go to. */
export interface GridEntry {
  readonly runs: readonly Run[];
  readonly columns: readonly string[];
  /** Line by line. */
  readonly texts: readonly (readonly string[])[];
  /** A text that begins with "=" is a formula. */
  readonly formulas: boolean;
}

export interface MenuRequest {
  readonly x: number;
  readonly y: number;
  readonly over: 'cells' | 'columns' | 'rows';
}

/** A place that was pointed at while a formula is being written: a column, or cells from a corner to the other. */
export type Pointed =
  | { readonly is: 'column'; readonly column: ColumnOutline }
  | {
      readonly is: 'cells';
      readonly from: ColumnOutline;
      readonly to: ColumnOutline;
      readonly fromRow: number;
      readonly toRow: number;
    };

/** A formula that was begun in a cell: its text, what is chosen in it, and what the cell held before, where that is known. */
export interface FormulaStart {
  readonly text: string;
  readonly from: number;
  readonly to: number;
  readonly was?: string;
}

/** What the grid asks of the page. It decides nothing itself: everything done in it becomes one of these calls. */
export interface GridHost {
  tile(sheet: SheetOutline, row: number, rows: number, column: number, columns: number): Promise<Tile>;
  tileOfRows(sheet: SheetOutline, rows: Int32Array, column: number, columns: number): Promise<Tile>;
  /** What an editor of that cell starts with. */
  editText(sheet: string, column: string, row: number): Promise<string>;
  selected(selection: GridSelection | null): void;
  enter(entry: GridEntry): void;
  clear(selection: GridSelection): void;
  copy(selection: GridSelection, cut: boolean, event: ClipboardEvent): void;
  paste(text: string): void;
  /** The handle was pulled from one run of rows over another. */
  fill(columns: readonly string[], from: Run, over: Run): void;
  resized(column: ColumnOutline, width: number): void;
  /** Columns were pulled to stand before a column, or at the end. */
  moved(columns: readonly ColumnOutline[], before: ColumnOutline | null): void;
  menu(request: MenuRequest): void;
  /** A formula is to be written for the active cell, beginning with this text; null for the formula of its column. */
  writeFormula(start: FormulaStart | null): void;
  /** A heading was double-clicked: its formula wants to be edited. */
  openHeading(column: ColumnOutline): void;
  /** What is being written: a formula that a name can go into next, or something whole. */
  writing(): 'wants a name' | 'whole' | null;
  point(pointed: Pointed): void;
  /** Puts what is being written into the book. Answers whether it was taken. */
  takeWritten(): Promise<boolean>;
  /** Cells stand elsewhere on the screen now. */
  shifted(): void;
  failed(reason: unknown): void;
}
