/** What a cell of the book can be. 0–5 are numbered as the ranges that functions read; 6 and 7 exist only in the book. */
export const CellKind = {
  blank: 0,
  number: 1,
  date: 2,
  text: 3,
  yesNo: 4,
  error: 5,
  formula: 6,
  held: 7,
} as const;
export type CellKind = (typeof CellKind)[keyof typeof CellKind];

/** A text that arrived where something else was expected, kept as it came. */
export interface Held {
  readonly held: string;
  /** Why it was not taken, one sentence. */
  readonly reason: string;
}

/** A cell with a formula of its own. The text has no leading "=". */
export interface CellFormula {
  readonly formula: string;
}

/** A date is its serial day (day 0 is 1899-12-30), so that no time zone can move it. */
export interface DateCell {
  readonly date: number;
}

/** One cell, as commands and files speak of it. */
export type Cell = null | number | string | boolean | DateCell | CellFormula | Held;

/**
 * A run of cells of one column as plain data, fit for an edit, a message and a journal. Nobody writes into its arrays:
 * whoever takes the block may go on using them.
 */
export interface CellBlock {
  readonly length: number;
  /** `CellKind` of each cell. */
  readonly kinds: Uint8Array;
  /** Number, date serial, 0|1 for yes/no; 0 elsewhere. */
  readonly numbers: Float64Array;
  /** Texts by row; null while there are none. */
  readonly texts: readonly (string | undefined)[] | null;
  readonly formulas: ReadonlyMap<number, string>;
  readonly held: ReadonlyMap<number, Held>;
}

/** Cells of one column from top to bottom: few as a list, many as a block. */
export type CellRun = readonly Cell[] | CellBlock;

/** The arrays of a column at one moment; they never change afterwards. */
export type Snapshot = Pick<CellBlock, 'kinds' | 'numbers' | 'texts'>;

/** True for a run given as a list of cells. */
export const isList = (run: CellRun): run is readonly Cell[] => Array.isArray(run);

/** One cell of a block. */
export function cellOf(block: CellBlock, row: number): Cell {
  switch (block.kinds[row]) {
    case CellKind.number:
      return block.numbers[row]!;
    case CellKind.date:
      return { date: block.numbers[row]! };
    case CellKind.text:
      return block.texts?.[row] ?? '';
    case CellKind.yesNo:
      return block.numbers[row] !== 0;
    case CellKind.formula:
      return { formula: block.formulas.get(row) ?? '' };
    case CellKind.held:
      return block.held.get(row) ?? null;
    default:
      return null;
  }
}
