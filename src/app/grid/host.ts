import type { ColumnOutline, SheetOutline } from '../../session/api.ts';
import type { FetchTile } from './tiles.ts';

/** What is chosen in a sheet. Rows from 0, both ends in; columns by id in sheet order. */
export interface GridSelection {
  readonly sheet: string;
  /** What was chosen: cells, or whole columns or rows by their headings. */
  readonly what: 'cells' | 'columns' | 'rows' | 'all';
  /** The cell that typing goes to. */
  readonly row: number;
  readonly column: string;
  readonly fromRow: number;
  readonly toRow: number;
  readonly columns: readonly string[];
}

/** A block of texts that was typed. */
export interface GridEntry {
  readonly row: number;
  readonly columns: readonly string[];
  /** Row by row. */
  readonly texts: readonly (readonly string[])[];
}

export interface MenuRequest {
  readonly x: number;
  readonly y: number;
  readonly over: 'cells' | 'columns' | 'rows';
}

/** What the grid asks of the page. It decides nothing itself: everything done in it becomes one of these calls. */
export interface GridHost {
  fetch(sheet: SheetOutline): FetchTile;
  /** What an editor of that cell starts with. */
  editText(sheet: string, column: string, row: number): Promise<string>;
  selected(selection: GridSelection | null): void;
  enter(entry: GridEntry): void;
  clear(selection: GridSelection): void;
  resized(column: ColumnOutline, width: number): void;
  menu(request: MenuRequest): void;
  /** A heading was activated (Enter or double click): its formula wants to be edited. */
  openHeading(column: ColumnOutline): void;
  failed(reason: unknown): void;
}
