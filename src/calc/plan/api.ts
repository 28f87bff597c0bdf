import type { Range, Value } from '../../../functions/core/value.ts';
import type { Bound } from '../ast.ts';

/** Where a plan finds the values that its formula uses. */
export interface Source {
  /** Current values of a column; the same object until a value of it changes. */
  column(sheet: string, column: string): Range;
  /** Value of one cell (a named cell, `$B$7`). */
  cell(sheet: string, column: string, row: number): Value;
}

/** A column formula, compiled once. */
export interface Plan {
  readonly formula: Bound;
  /** Functions in it that work through a whole column again in each row: the column is slow, and the page says why. */
  readonly slow: readonly string[];
  /**
   * Computes the rows listed (all when undefined) into `out`, which holds a place for each row of the sheet. What is not
   * listed is left as it is.
   */
  run(source: Source, rows: Int32Array | undefined, out: Results): void;
}

/** Where a plan writes: the arrays of a range that is still being filled. */
export interface Results {
  readonly kinds: Uint8Array;
  readonly numbers: Float64Array;
  set(row: number, value: Value): void;
}

/** Compiles a bound formula. Never throws: what cannot be computed becomes an error value in every row. */
export type Compile = (formula: Bound) => Plan;
