/** The data model: book, sheet, column, role and named cell. */
import type { Dimension, Per } from '../units/dimension.ts';
import type { Cells } from './cells.ts';

export type ColumnKind = 'number' | 'text' | 'date' | 'yes-no' | 'choice';

/** How numbers of a column are written; dates are always written as the book's date format says. */
export interface NumberFormat {
  /** Digits after the decimal mark; undefined: as many as it has, up to 10 significant. */
  readonly digits?: number;
  readonly percent?: boolean;
}

/** Everything about a column but its cells. Never changed in place: an edit replaces it. */
export interface Column {
  /** Stays the same for the column's life; no formula shows it. */
  readonly id: string;
  /** What formulas call it: an identifier, unique in its sheet, not a cell address, not a function. */
  readonly name: string;
  readonly label: string;
  readonly kind: ColumnKind;
  readonly dimension?: Dimension;
  /** Display unit, one of the dimension's; values are stored in the base unit. */
  readonly unit?: string;
  /** The numbers are rates: so much of it per day or per week. */
  readonly per?: Per;
  readonly choices?: readonly string[];
  /** Column formula, without "=". A row may hold a value of its own over it. */
  readonly formula?: string;
  readonly note?: string;
  /** Pixels. */
  readonly width?: number;
  readonly format?: NumberFormat;
  readonly hidden?: boolean;
  /** What the column is, by a usual name that it no longer has; see roles.ts. */
  readonly role?: string;
}

/** What a sheet is for; the page lists the book's contents by it. */
export type Purpose = 'gathered' | 'worked' | 'notes';

export interface Sheet {
  readonly id: string;
  readonly name: string;
  readonly label: string;
  readonly purpose: Purpose;
  readonly note?: string;
  readonly columns: readonly Column[];
  /** Number of data rows. Row 1 of formulas is index 0 here. */
  readonly rows: number;
  /** Cells by column id; each as long as `rows`. */
  readonly cells: ReadonlyMap<string, Cells>;
}

/** A named cell: one value that formulas may use by name. */
export interface NamedCell {
  readonly name: string;
  readonly sheet: string;
  readonly column: string;
  readonly row: number;
  readonly note?: string;
  /** What its number measures where its column does not say, and the unit it was typed in; the value is in the base unit. */
  readonly dimension?: Dimension;
  readonly unit?: string;
  readonly per?: Per;
  /** What it is, by a usual name that it no longer has; see roles.ts. */
  readonly role?: string;
}

/** A JSON value, for the parts of a book that one layer alone understands. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/** Named collections of records: each layer that owns one checks its shape with zod when it reads it. */
export const partNames = [
  'recipes',
  'charts',
  'handouts',
  'provenance',
  'marks',
  'views',
  'accepted',
  'pictures',
  'settings',
] as const;
export type PartName = (typeof partNames)[number];

export interface Book {
  readonly title: string;
  readonly sheets: readonly Sheet[];
  readonly names: ReadonlyMap<string, NamedCell>;
  readonly parts: Readonly<Record<PartName, ReadonlyMap<string, Json>>>;
}
