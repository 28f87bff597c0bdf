/** What a sheet answers: its columns, its cells in blocks, one cell. Plain data. */
import type { Column, NamedCell, Purpose } from '../../book/model.ts';
import type { Place } from '../../calc/api.ts';
import type { Drawing } from '../marks/drawings.ts';
import type { MarksOutline } from '../marks/mark-words.ts';
import type { SheetView } from './sheet-view.ts';

export interface ColumnOutline extends Column {
  /** The small address letter: A, B, … */
  readonly address: string;
  /** The unit of its numbers as its heading says it: `cm`, `°`, `kg per week`. */
  readonly sign?: string;
  /** Rules and drawings of its cells, in words. */
  readonly marks?: MarksOutline;
}

/** A setting: its value, label and unit as its row says. */
export type NameOutline = NamedCell & {
  readonly display: string;
  readonly label: string;
  readonly unit?: string;
};

export interface SheetOutline {
  readonly id: string;
  readonly name: string;
  readonly label: string;
  readonly purpose: Purpose;
  readonly note?: string;
  readonly rows: number;
  readonly columns: readonly ColumnOutline[];
  /** How it is looked at, where that is kept. */
  readonly view?: SheetView;
}

/** A block of a sheet as the grid shows it, row by row. */
export interface Tile {
  readonly sheet: string;
  readonly version: number;
  readonly row: number;
  readonly rows: number;
  readonly column: number;
  readonly columns: number;
  readonly texts: readonly string[];
  /** Texts as other programs read them, where they differ: without a unit behind the number, dates of ISO 8601; by index. */
  readonly bare?: Readonly<Record<number, string>>;
  readonly marks: Uint16Array;
  /** Cells that offer texts to choose from, others than their column; the row counts in the tile, the column in the sheet. */
  readonly offers?: readonly CellOffer[];
  /** What rules and drawings put into the cells of marked columns. */
  readonly drawings?: readonly Drawing[];
}

export interface CellOffer {
  readonly row: number;
  readonly column: number;
  readonly choices: readonly string[];
}

/** One cell, for the formula line and the panels. */
export interface CellInfo {
  readonly place: Place;
  /** As the grid shows it, with the column's unit. */
  readonly display: string;
  /** What an editor starts with: the typed value in the display unit, or "=" and the formula. */
  readonly editText: string;
  readonly from: 'blank' | 'value' | 'held' | 'column formula' | 'own formula';
  /** True when this row holds something of its own over a column formula. */
  readonly override: boolean;
  readonly columnFormula?: string;
  /** Why there is an error or a held value, one sentence. */
  readonly sentence?: string;
  /** The value is an error only because a measure is missing. */
  readonly pending?: true;
  readonly name?: string;
  /** The mark that its column's rules give it and what is drawn into it, a sentence each. */
  readonly marked?: readonly string[];
}
