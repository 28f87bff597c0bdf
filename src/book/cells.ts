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
 * The cells of one column: a kind and a number for each row in typed arrays, texts beside them, formulas and held values
 * apart because they are few. Rows beyond `length` do not exist.
 */
export class Cells {
  length: number;
  kinds: Uint8Array;
  /** Number, date serial, 0|1 for yes/no. */
  numbers: Float64Array;
  /** Texts by row; null while the column has none. */
  texts: (string | undefined)[] | null = null;
  readonly formulas = new Map<number, string>();
  readonly held = new Map<number, Held>();
  /** Counts every change; whoever caches something derived from these cells compares it. */
  version = 0;

  constructor(length = 0) {
    this.length = length;
    this.kinds = new Uint8Array(length);
    this.numbers = new Float64Array(length);
  }

  get(row: number): Cell {
    switch (this.kinds[row]) {
      case CellKind.number:
        return this.numbers[row]!;
      case CellKind.date:
        return { date: this.numbers[row]! };
      case CellKind.text:
        return this.texts?.[row] ?? '';
      case CellKind.yesNo:
        return this.numbers[row] !== 0;
      case CellKind.formula:
        return { formula: this.formulas.get(row) ?? '' };
      case CellKind.held:
        return this.held.get(row) ?? null;
      default:
        return null;
    }
  }

  set(row: number, cell: Cell): void {
    if (row < 0 || row >= this.length) throw new RangeError(`row ${row} of ${this.length}`);
    this.version++;
    const before = this.kinds[row];
    if (before === CellKind.formula) this.formulas.delete(row);
    else if (before === CellKind.held) this.held.delete(row);
    else if (before === CellKind.text && this.texts) this.texts[row] = undefined;
    this.numbers[row] = 0;
    if (cell === null) this.kinds[row] = CellKind.blank;
    else if (typeof cell === 'number') {
      this.kinds[row] = CellKind.number;
      this.numbers[row] = cell;
    } else if (typeof cell === 'boolean') {
      this.kinds[row] = CellKind.yesNo;
      this.numbers[row] = cell ? 1 : 0;
    } else if (typeof cell === 'string') {
      this.kinds[row] = CellKind.text;
      this.texts ??= new Array<string | undefined>(this.length);
      this.texts[row] = cell;
    } else if ('date' in cell) {
      this.kinds[row] = CellKind.date;
      this.numbers[row] = cell.date;
    } else if ('formula' in cell) {
      this.kinds[row] = CellKind.formula;
      this.formulas.set(row, cell.formula);
    } else {
      this.kinds[row] = CellKind.held;
      this.held.set(row, cell);
    }
  }
}
