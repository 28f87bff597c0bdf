import type { Column, NamedCell, Purpose } from '../book/model.ts';
import type { CalcDoubt, FormulaCheck, Place } from '../calc/api.ts';

import type { SheetView } from './sheet-view.ts';

/** What the page and the command line may ask of an open book, and what comes back: plain data, safe to post. */

export interface ColumnOutline extends Column {
  /** The small address letter: A, B, … */
  readonly address: string;
}

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

export interface Outline {
  readonly title: string;
  /** Grows by one with every change. */
  readonly version: number;
  readonly sheets: readonly SheetOutline[];
  readonly names: readonly (NamedCell & { readonly display: string })[];
  /** What undo and redo would do, in words; null when there is nothing. */
  readonly undo: string | null;
  readonly redo: string | null;
  readonly doubts: number;
}

/** Marks of a cell in a tile, one bit each. */
export const CellMark = {
  /** An error value; the text is its code. */
  error: 1,
  /** A text held where something else was expected. */
  held: 2,
  /** Own value or formula over a column formula. */
  override: 4,
  /** Computed by the column's formula. */
  computed: 8,
  /** A free formula of its own. */
  formula: 16,
  /** Written right-aligned: number or date. */
  numeric: 32,
  /** Has a name. */
  named: 64,
} as const;

/** A block of a sheet as the grid shows it, row by row. */
export interface Tile {
  readonly sheet: string;
  readonly version: number;
  readonly row: number;
  readonly rows: number;
  readonly column: number;
  readonly columns: number;
  readonly texts: readonly string[];
  readonly marks: Uint8Array;
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
  readonly name?: string;
}

/** A point of the figure, cm; +x forward, +y up, origin on the floor under mid-foot. */
export type Point = readonly [x: number, y: number];

export interface PostureFigure {
  readonly heel: Point;
  readonly ball: Point;
  readonly toe: Point;
  readonly ankle: Point;
  readonly knee: Point;
  readonly hip: Point;
  readonly shoulder: Point;
  readonly bar: Point;
  /** Degrees. */
  readonly lean: number;
  readonly shank: number;
  readonly pitch: number;
  readonly kneeFlexion: number;
  readonly hipFlexion: number;
  readonly lift: number;
  readonly depth: number;
}

/** The lifter of a row at depth, flat and lifted; a set-up that no posture holds says why. */
export interface Figure {
  readonly sheet: string;
  readonly row: number;
  readonly title: string;
  readonly flat: PostureFigure | { readonly sentence: string };
  readonly lifted: PostureFigure | { readonly sentence: string } | null;
  /** SD of the lean for 1 cm and 2° of measuring error, degrees; null without a posture. */
  readonly leanError: number | null;
  /** Columns the figure could not find or that are blank in this row. */
  readonly missing: readonly string[];
}

export interface Doubt {
  readonly place: Place;
  readonly about: CalcDoubt['about'] | 'held';
  readonly sentence: string;
}

/** What a command did: the outline after it, or why it was refused. Nothing is changed by a refused command. */
export type Done =
  | { readonly ok: true; readonly outline: Outline; readonly note?: string }
  | { readonly ok: false; readonly sentence: string };

export type { FormulaCheck, Place };
