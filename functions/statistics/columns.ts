import { numbersIn } from '../core/invoke.ts';
import type { Range } from '../core/value.ts';
import { ascending, mean, standardDeviation } from './describe.ts';
import { once, onceForTwo } from './memo.ts';

/** What is asked of one column of numbers again and again, once for each range. */
export interface Column {
  readonly values: Float64Array;
  readonly n: number;
  readonly mean: number;
  /** Divisor n − 1; NaN for fewer than two values. */
  readonly sd: number;
  readonly sorted: Float64Array;
}

/** The numbers of a range, blanks left out. */
export const columnOf: (range: Range) => Column = once((range) => {
  const { values } = numbersIn(range);
  // Order is asked for by few, and costs the most.
  let sorted: Float64Array | undefined;
  return {
    values,
    n: values.length,
    mean: mean(values),
    sd: standardDeviation(values),
    get sorted() {
      sorted ??= ascending(values);
      return sorted;
    },
  };
});

/** Two columns cell by cell, pairs with a blank on either side left out. */
export interface Pairs {
  readonly a: Float64Array;
  readonly b: Float64Array;
  readonly n: number;
}

export const pairsOf: (a: Range, b: Range) => Pairs = onceForTwo((first, second) => {
  const x = numbersIn(first);
  const y = numbersIn(second);
  const a: number[] = [];
  const b: number[] = [];
  for (let i = 0, j = 0; i < x.at.length && j < y.at.length; ) {
    const gap = x.at[i]! - y.at[j]!;
    if (gap === 0) {
      a.push(x.values[i++]!);
      b.push(y.values[j++]!);
    } else if (gap < 0) i++;
    else j++;
  }
  return { a: Float64Array.from(a), b: Float64Array.from(b), n: a.length };
});

/** Differences a − b of the pairs. */
export const differencesOf: (a: Range, b: Range) => Float64Array = onceForTwo((a, b) => {
  const pairs = pairsOf(a, b);
  return pairs.a.map((value, i) => value - pairs.b[i]!);
});

/** The complete rows of a block (rows with a blank left out), row by row. */
export const completeRows: (range: Range) => readonly Float64Array[] = once((range) => {
  const { values, at } = numbersIn(range);
  const rows: Float64Array[] = [];
  for (let i = 0; i < at.length; ) {
    const row = Math.floor(at[i]! / range.columns);
    let end = i;
    while (end < at.length && Math.floor(at[end]! / range.columns) === row) end++;
    if (end - i === range.columns) rows.push(values.subarray(i, end));
    i = end;
  }
  return rows;
});
