import { CellError, EmptyValue } from 'hyperformula';
import type { Issue } from '../../../functions/core/issue.ts';
import type { Value } from '../../../functions/core/value.ts';
import { cellEngine, type NumberSort } from '../cell-engine/engine.ts';
import { errorOf, type Inner, isRich, issueOfError } from '../cell-engine/values.ts';
import { notANumber, unknownError } from './problems.ts';

/**
 * What an element is: 0–5 as `Kind`, 6–9 numbers of a further sort. The cell engine remembers those sorts through `+` and
 * `−`, so plans must too to know which results are dates.
 */
export const Tag = {
  blank: 0,
  number: 1,
  date: 2,
  text: 3,
  yesNo: 4,
  error: 5,
  time: 6,
  dateTime: 7,
  percent: 8,
  currency: 9,
  /** No cell of an array stands here: a function takes its default. */
  missing: 10,
} as const;

const tagOfSort: Readonly<Record<NumberSort, number>> = {
  date: Tag.date,
  time: Tag.time,
  'date-time': Tag.dateTime,
  percent: Tag.percent,
  currency: Tag.currency,
};
const sortOfTag: readonly (NumberSort | undefined)[] = [
  undefined,
  undefined,
  'date',
  undefined,
  undefined,
  undefined,
  'time',
  'date-time',
  'percent',
  'currency',
];

export const isNumberTag = (tag: number): boolean => tag === 1 || tag === 2 || (tag > 5 && tag < 10);

/**
 * Values side by side, one a row of the block being computed (or one a cell of an area). With `single` there is one
 * value, in element 0, that stands for every row.
 */
export class Vector {
  tags: Uint8Array;
  numbers: Float64Array;
  texts: readonly (string | undefined)[] | null = null;
  errors: readonly (Issue | undefined)[] | null = null;
  /** Where element 0 stands in `texts` and `errors`. */
  base = 0;
  single = false;
  /** Every element is a number: no tag has to be looked at. */
  plain = false;
  /** Every element is yes or no. */
  decided = false;
  /** Cells of an array: the cell engine looks for numbers that are not finite only once a single value comes out. */
  unchecked = false;
  /** So many tags from 0 are known to be `Tag.number` already. */
  private numberTags = 0;
  private ownTexts: (string | undefined)[] | null = null;
  private ownErrors: (Issue | undefined)[] | null = null;

  constructor(size: number) {
    this.tags = new Uint8Array(size);
    this.numbers = new Float64Array(size);
  }

  /** Makes room for `size` values. */
  reserve(size: number): void {
    if (this.tags.length >= size) return;
    this.tags = new Uint8Array(size);
    this.numbers = new Float64Array(size);
    this.numberTags = 0;
  }

  /** Declares the first n elements to be numbers; the numbers themselves are written by the caller. */
  allNumbers(n: number): void {
    if (this.numberTags < n) {
      this.tags.fill(Tag.number, 0, n);
      this.numberTags = n;
    }
    this.plain = true;
    this.decided = false;
  }

  /** Declares the first n elements to be of one tag that is no number. */
  all(tag: number, n: number): void {
    this.tags.fill(tag, 0, n);
    this.numberTags = 0;
    this.plain = false;
    this.decided = tag === Tag.yesNo;
  }

  /** Elements of any tag will be set one by one. */
  mixed(): void {
    this.plain = false;
    this.decided = false;
    this.numberTags = 0;
  }

  /** Finds out whether elements that were set one by one have all become numbers. */
  look(n: number): void {
    if (this.decided) return;
    for (let i = 0; i < n; i++) if (this.tags[i] !== Tag.number) return;
    this.numberTags = n;
    this.plain = true;
  }

  setNumber(i: number, value: number, tag: number): void {
    if (value - value !== 0 && !this.unchecked) {
      this.setError(i, notANumber);
      return;
    }
    this.tags[i] = tag;
    this.numbers[i] = value + 0;
  }
  setYesNo(i: number, value: boolean): void {
    this.tags[i] = Tag.yesNo;
    this.numbers[i] = value ? 1 : 0;
  }
  setBlank(i: number): void {
    this.tags[i] = Tag.blank;
  }
  setText(i: number, value: string): void {
    this.ownTexts ??= [];
    this.texts = this.ownTexts;
    this.tags[i] = Tag.text;
    this.ownTexts[i] = value;
  }
  setError(i: number, value: Issue): void {
    this.ownErrors ??= [];
    this.errors = this.ownErrors;
    this.tags[i] = Tag.error;
    this.ownErrors[i] = value;
  }

  /** Copies element j of another. */
  copy(i: number, from: Vector, j: number): void {
    const tag = from.tags[j]!;
    if (tag === Tag.text) this.setText(i, from.textAt(j));
    else if (tag === Tag.error) this.setError(i, from.errorAt(j));
    else {
      this.tags[i] = tag;
      this.numbers[i] = from.numbers[j]!;
    }
  }

  textAt(i: number): string {
    return this.texts?.[this.base + i] ?? '';
  }
  errorAt(i: number): Issue {
    return this.errors?.[this.base + i] ?? unknownError;
  }

  /** As functions of the domain are handed it. */
  valueAt(i: number): Value {
    switch (this.tags[i]) {
      case Tag.blank:
        return null;
      case Tag.text:
        return this.textAt(i);
      case Tag.yesNo:
        return this.numbers[i] !== 0;
      case Tag.error:
        return this.errorAt(i);
      default:
        return this.numbers[i]!;
    }
  }

  /** As the cell engine holds it. */
  innerAt(i: number): Inner {
    const tag = this.tags[i]!;
    switch (tag) {
      case Tag.blank:
        return EmptyValue;
      case Tag.number:
        return this.numbers[i]!;
      case Tag.text:
        return this.textAt(i);
      case Tag.yesNo:
        return this.numbers[i] !== 0;
      case Tag.error:
        return errorOf(this.errorAt(i));
      default:
        return cellEngine().rich(this.numbers[i]!, sortOfTag[tag]!);
    }
  }

  setValue(i: number, value: Value | undefined): void {
    if (value === null || value === undefined) this.setBlank(i);
    else if (typeof value === 'number') this.setNumber(i, value, Tag.number);
    else if (typeof value === 'string') this.setText(i, value);
    else if (typeof value === 'boolean') this.setYesNo(i, value);
    else this.setError(i, value);
  }

  /** Takes a result of the cell engine; `name` is the function an error is of. */
  setInner(i: number, value: Inner | undefined, name?: string): void {
    if (typeof value === 'number') this.setNumber(i, value, Tag.number);
    else if (typeof value === 'string') this.setText(i, value);
    else if (typeof value === 'boolean') this.setYesNo(i, value);
    else if (value === EmptyValue || value === undefined) this.setBlank(i);
    else if (value instanceof CellError) this.setError(i, issueOfError(value, name));
    else if (isRich(value)) this.setNumber(i, value.val, tagOfRich(value));
    else this.setError(i, unknownError);
  }
}

export const tagOfRich = (value: Parameters<ReturnType<typeof cellEngine>['sortOf']>[0]): number =>
  tagOfSort[cellEngine().sortOf(value)];

/** A vector of one value for every row. */
export function singleVector(value: Value): Vector {
  const vector = new Vector(1);
  vector.single = true;
  vector.setValue(0, value);
  vector.plain = vector.tags[0] === Tag.number;
  return vector;
}

/** A vector of the values at `rows` of another, in that order. */
export function gather(from: Vector, rows: Int32Array, n: number, into: Vector): Vector {
  into.reserve(n);
  if (from.plain) {
    const { numbers } = into;
    for (let i = 0; i < n; i++) numbers[i] = from.numbers[rows[i]!]!;
    into.allNumbers(n);
    return into;
  }
  into.mixed();
  for (let i = 0; i < n; i++) into.copy(i, from, rows[i]!);
  return into;
}
