import type { Issue } from '../../functions/core/issue.ts';
import type { Matrix, Range, Value } from '../../functions/core/value.ts';
import type { Change } from '../book/edit.ts';
import type { Dimension, Per } from '../units/dimension.ts';

/** Where a formula stands. `row` is absent for a column formula. */
export interface Place {
  readonly sheet: string;
  readonly column: string;
  readonly row?: number;
}

/** A piece of a formula's text: [from, to) in characters. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** What can be said about a formula without computing it. Feeds the editor: colouring, underlines, signature help. */
export interface FormulaCheck {
  readonly ok: boolean;
  readonly problems: readonly (Span & { readonly issue: Issue; readonly sentence: string })[];
  /** What may not be meant, with what to write instead. The formula works all the same. */
  readonly doubts: readonly (Span & { readonly sentence: string; readonly instead: string })[];
  /** Tokens in order, for colouring by meaning. */
  readonly tokens: readonly (Span & {
    readonly is:
      | 'function'
      | 'column'
      | 'sheet'
      | 'name'
      | 'cell'
      | 'number'
      | 'text'
      | 'operator'
      | 'bracket'
      | 'unknown';
  })[];
  /** What the result stands for, where the book can tell. */
  readonly meaning?: Meaning;
}

/** What the number in a cell stands for: a date, a quantity to be shown in a unit, a rate per day or per week. */
export type Meaning =
  | { readonly is: 'date' }
  | { readonly is: 'quantity'; readonly dimension: Dimension; readonly unit: string }
  | {
      readonly is: 'rate';
      readonly per: Per;
      /** Absent: a plain number per day or week. */
      readonly dimension?: Dimension;
      readonly unit?: string;
    };

/** Something the calculation wants to be looked at. Not an error: the value stands. */
export interface CalcDoubt {
  readonly place: Place;
  readonly about: 'dimension' | 'slow' | 'cycle' | 'hung' | 'error' | 'pending' | 'blank';
  readonly sentence: string;
  /** How many results have this cause, where it is more than the one at the place. */
  readonly results?: number;
}

export interface Progress {
  readonly done: number;
  readonly total: number;
  readonly about: string;
  /** What is computed next. */
  readonly place?: Place;
}

/** Which values are new after a recalculation: rows [from, to) of a column. */
export interface Fresh {
  readonly sheet: string;
  readonly column: string;
  readonly from: number;
  readonly to: number;
}

/**
 * The values of a book. It reads the book, never changes it. One object a book; `update` after every edit.
 */
export interface Calculation {
  /**
   * Brings all values up to date after these changes, which are noted at the call itself. A generator so that long work
   * can report and be cancelled between steps (`return()` it): what was not computed yet stays dirty and the next update
   * computes it.
   */
  update(changes: readonly Change[]): Generator<Progress, readonly Fresh[]>;
  /** Marks everything dirty (opening a book). */
  all(): Generator<Progress, readonly Fresh[]>;
  /**
   * Current values of a column, own values and formula results together. A new object whenever a value changed; its
   * arrays may be those of the one before, changed in place, so nobody keeps a range across an update.
   */
  column(sheet: string, column: string): Range;
  value(sheet: string, column: string, row: number): Value;
  /**
   * What a cell's own formula, or the unit that a named cell was typed in, says of its number where its column does not
   * say; for showing it.
   */
  meaning(sheet: string, column: string, row: number): Meaning | undefined;
  /** What a column's formula says of its numbers, where the column itself does not say. */
  columnMeaning(sheet: string, column: string): Meaning | undefined;
  /** One sentence for an error value. */
  sentence(issue: Issue): string;
  check(formula: string, place: Place): FormulaCheck;
  /** Computes a formula as if it stood there, changing nothing (preview, the command line's `eval`). */
  evaluate(formula: string, place?: Place): Value | Matrix;
  /**
   * Computes a formula for every row of a sheet as a column's formula would be, changing nothing. The same object until
   * something that the formula reads has changed.
   */
  rows(formula: string, sheet: string): Range;
  /**
   * Computes a formula once over some rows of a sheet (all where none are given): a bare name of a column means its
   * values in these rows.
   */
  ofSelection(formula: string, sheet: string, rows?: ArrayLike<number>): Value;
  doubts(): readonly CalcDoubt[];
  /** Columns and cells that a formula reads, and those that read a place. */
  precedents(place: Place): readonly Place[];
  dependents(place: Place): readonly Place[];
  /** What is being computed at this moment. */
  current(): Place | undefined;
  /** Leaves out a formula that took too long: its value is an error until it is changed. */
  stop(place: Place): void;
}
