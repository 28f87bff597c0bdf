import { Kind, rangeOf, type Value, valueAt } from '../../../functions/core/value.ts';
import type { Bound } from '../../../src/calc/ast.ts';
import type { Results, Source } from '../../../src/calc/plan/api.ts';
import { compile } from '../../../src/calc/plan/compile.ts';
import type { RandomSheet } from './data.ts';

/** The columns of a sheet for a plan. */
export const sourceOf = (sheet: Pick<RandomSheet, 'ranges'>): Source => ({
  column: (_sheet, column) => sheet.ranges[column]!,
  cell: (_sheet, column, row) => {
    const range = sheet.ranges[column]!;
    return row < range.rows ? valueAt(range, row) : null;
  },
});

/** A column that is being filled. */
export class Filled implements Results {
  readonly kinds: Uint8Array;
  readonly numbers: Float64Array;
  readonly others: (Value | undefined)[];
  constructor(rows: number) {
    this.kinds = new Uint8Array(rows);
    this.numbers = new Float64Array(rows);
    this.others = new Array(rows);
  }
  set(row: number, value: Value): void {
    const range = rangeOf(1, 1, [value]);
    this.kinds[row] = range.kinds[0]!;
    this.numbers[row] = range.numbers[0]!;
    this.others[row] = value;
  }
  at(row: number): Value {
    switch (this.kinds[row]) {
      case Kind.blank:
        return null;
      case Kind.number:
      case Kind.date:
        return this.numbers[row]!;
      case Kind.yesNo:
        return this.numbers[row] !== 0;
      default:
        return this.others[row] ?? null;
    }
  }
}

/** Runs a formula over all rows of a sheet, or the rows listed. */
export function runFormula(bound: Bound, sheet: RandomSheet, rows?: Int32Array): Filled {
  const out = new Filled(sheet.rows);
  compile(bound).run(sourceOf(sheet), rows, out);
  return out;
}
