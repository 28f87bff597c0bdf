import type { Issue } from './issue.ts';

/** One value of a cell or an argument. `null` is a blank; a date is its serial day, a number. */
export type Value = null | number | string | boolean | Issue;

/** What the cells of a range hold. The numbers are part of the contract between the layers. */
export const Kind = { blank: 0, number: 1, date: 2, text: 3, yesNo: 4, error: 5 } as const;
export type Kind = (typeof Kind)[keyof typeof Kind];

/**
 * A block of cells, row by row, as typed arrays. It never changes once made: whoever edits the cells behind it makes a
 * new one, so anything derived from it (parsed numbers, rows by athlete, order by date) may be cached by identity.
 */
export interface Range {
  readonly rows: number;
  readonly columns: number;
  /** `Kind` of each cell; length rows × columns, row-major. */
  readonly kinds: Uint8Array;
  /** Number, date serial, or 0|1 for yes/no; anything elsewhere. */
  readonly numbers: Float64Array;
  /** Text of the text cells; null when there are none. */
  readonly texts: readonly (string | undefined)[] | null;
  /** Error values of the error cells; null when there are none. */
  readonly errors: readonly (Issue | undefined)[] | null;
}

export function isRange(value: unknown): value is Range {
  return typeof value === 'object' && value !== null && 'kinds' in value;
}

/** An array result, row by row. */
export interface Matrix {
  readonly rows: number;
  readonly columns: number;
  readonly values: readonly Value[];
}

export function isMatrix(value: unknown): value is Matrix {
  return typeof value === 'object' && value !== null && 'values' in value && 'rows' in value;
}

/** What is handed to a function: `undefined` where nothing stands (a left-out or skipped argument). */
export type Argument = Value | Range | undefined;

/** What a kernel answers. */
export type Outcome = number | string | boolean | Issue | Matrix;

/** The value at a place of a range. */
export function valueAt(range: Range, index: number): Value {
  switch (range.kinds[index]) {
    case Kind.number:
    case Kind.date:
      return range.numbers[index]!;
    case Kind.yesNo:
      return range.numbers[index] !== 0;
    case Kind.text:
      return range.texts?.[index] ?? '';
    case Kind.error:
      return range.errors?.[index] ?? { code: '#ERROR!', reason: 'unknown' };
    default:
      return null;
  }
}

/** A range from plain values, row by row. */
export function rangeOf(rows: number, columns: number, values: readonly Value[]): Range {
  const size = rows * columns;
  const kinds = new Uint8Array(size);
  const numbers = new Float64Array(size);
  let texts: (string | undefined)[] | null = null;
  let errors: (Issue | undefined)[] | null = null;
  for (let i = 0; i < size; i++) {
    const value = values[i] ?? null;
    if (value === null) continue;
    if (typeof value === 'number') {
      kinds[i] = Kind.number;
      numbers[i] = value;
    } else if (typeof value === 'boolean') {
      kinds[i] = Kind.yesNo;
      numbers[i] = value ? 1 : 0;
    } else if (typeof value === 'string') {
      kinds[i] = Kind.text;
      texts ??= new Array<string | undefined>(size);
      texts[i] = value;
    } else {
      kinds[i] = Kind.error;
      errors ??= new Array<Issue | undefined>(size);
      errors[i] = value;
    }
  }
  return { rows, columns, kinds, numbers, texts, errors };
}

/** A range of one column. */
export const columnRange = (...values: readonly Value[]): Range => rangeOf(values.length, 1, values);

const NUMBER_TEXT = /^\s*[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?\s*$/;

/** The number a text stands for (sign, digits, decimal point, exponent, blanks around it), or undefined. */
export function numberFromText(text: string): number | undefined {
  if (!NUMBER_TEXT.test(text)) return undefined;
  const number = Number(text);
  return Number.isFinite(number) ? number : undefined;
}
