import { type Issue, isIssue } from '../../../functions/core/issue.ts';
import { Kind, type Range, type Value, valueAt } from '../../../functions/core/value.ts';
import { type CellBlock, CellKind } from '../../book/cells.ts';
import type { Results } from '../plan/api.ts';

/**
 * Values of one column that calculation writes: formula results, with the book's own values among them. Readers get
 * `range()`: its arrays are these very arrays, so a new wrapper stands for a new version and an old one must not be kept.
 */
export class ColumnValues implements Results {
  kinds: Uint8Array;
  numbers: Float64Array;
  private texts: (string | undefined)[] | null = null;
  private errors: (Issue | undefined)[] | null = null;
  private wrapper: Range | undefined;

  constructor(readonly rows: number) {
    this.kinds = new Uint8Array(rows);
    this.numbers = new Float64Array(rows);
  }

  set(row: number, value: Value): void {
    if (value === null) this.kinds[row] = Kind.blank;
    else if (typeof value === 'number') {
      this.kinds[row] = Kind.number;
      this.numbers[row] = value;
    } else if (typeof value === 'boolean') {
      this.kinds[row] = Kind.yesNo;
      this.numbers[row] = value ? 1 : 0;
    } else if (typeof value === 'string') {
      this.kinds[row] = Kind.text;
      this.texts ??= new Array<string | undefined>(this.rows);
      this.texts[row] = value;
    } else if (isIssue(value)) {
      this.kinds[row] = Kind.error;
      this.errors ??= new Array<Issue | undefined>(this.rows);
      this.errors[row] = value;
    }
  }

  setDate(row: number, day: number): void {
    this.kinds[row] = Kind.date;
    this.numbers[row] = day;
  }

  at(row: number): Value {
    return valueAt(this.range(), row);
  }

  /** Takes over what the book holds in rows [from, to); held values are texts to formulas, formulas come later. */
  take(cells: CellBlock, from: number, to: number): void {
    this.kinds.set(cells.kinds.subarray(from, to), from);
    this.numbers.set(cells.numbers.subarray(from, to), from);
    if (cells.texts) {
      this.texts ??= new Array<string | undefined>(this.rows);
      for (let row = from; row < to; row++) this.texts[row] = cells.texts[row];
    }
    if (cells.formulas.size === 0 && cells.held.size === 0) return;
    for (let row = from; row < to; row++) {
      if (this.kinds[row] === CellKind.formula) this.kinds[row] = Kind.blank;
      else if (this.kinds[row] === CellKind.held) this.set(row, cells.held.get(row)?.held ?? '');
    }
  }

  /** The first `rows` rows, in arrays of another length. */
  resized(rows: number, keep: number): ColumnValues {
    const other = new ColumnValues(rows);
    other.kinds.set(this.kinds.subarray(0, keep));
    other.numbers.set(this.numbers.subarray(0, keep));
    if (this.texts) {
      other.texts = this.texts.slice(0, keep);
      other.texts.length = rows;
    }
    if (this.errors) {
      other.errors = this.errors.slice(0, keep);
      other.errors.length = rows;
    }
    return other;
  }

  /** Tells that values have changed: the next `range()` is a new object. */
  changed(): void {
    this.wrapper = undefined;
  }

  range(): Range {
    if (!this.wrapper || this.wrapper.texts !== this.texts || this.wrapper.errors !== this.errors) {
      const { rows, kinds, numbers, texts, errors } = this;
      this.wrapper = { rows, columns: 1, kinds, numbers, texts, errors };
    }
    return this.wrapper;
  }
}
