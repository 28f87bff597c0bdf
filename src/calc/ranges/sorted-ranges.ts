import { CellError, ErrorType } from 'hyperformula';
import { type Issue, isIssue } from '../../../functions/core/issue.ts';
import { Kind, type Range, valueAt } from '../../../functions/core/value.ts';

/** Numbers and dates of a range in their order, or its first error value. Remembered for the range. */
export function numbersOf(range: Range): Float64Array | Issue {
  let found = unsorted.get(range);
  if (!found) {
    found = collect(range);
    unsorted.set(range, found);
  }
  return found;
}
const unsorted = new WeakMap<Range, Float64Array | Issue>();

function collect(range: Range): Float64Array | Issue {
  const size = range.rows * range.columns;
  const values = new Float64Array(size);
  let n = 0;
  for (let i = 0; i < size; i++) {
    const kind = range.kinds[i];
    if (kind === Kind.number || kind === Kind.date) values[n++] = range.numbers[i]!;
    else if (kind === Kind.error) return valueAt(range, i) as Issue;
  }
  return values.subarray(0, n);
}

/** The same in rising order. */
export function sortedNumbersOf(range: Range): Float64Array | Issue {
  let found = sorted.get(range);
  if (!found) {
    const numbers = numbersOf(range);
    found = isIssue(numbers) ? numbers : numbers.slice().sort();
    sorted.set(range, found);
  }
  return found;
}
const sorted = new WeakMap<Range, Float64Array | Issue>();

const problem = (type: ErrorType, message: string): CellError => new CellError(type, message);
const noValue = problem(ErrorType.NUM, 'Needs at least one value.');
const small = problem(ErrorType.NUM, 'Value too small.');
const large = problem(ErrorType.NUM, 'Value too large.');

type Answer = number | CellError | Issue;

const ofSorted =
  (answer: (values: Float64Array, k: number) => Answer) =>
  (range: Range, k: number): Answer => {
    const values = sortedNumbersOf(range);
    return isIssue(values) ? values : answer(values, k);
  };

/** Between the two values that a place lies between; places count from 0. */
function interpolate(values: Float64Array, place: number): number {
  const low = Math.floor(place);
  const value = values[low]!;
  return low + 1 < values.length ? value + (place - low) * (values[low + 1]! - value) : value;
}

const inclusive = (values: Float64Array, k: number): Answer =>
  values.length === 0 ? noValue : interpolate(values, k * (values.length - 1));

function exclusive(values: Float64Array, k: number): Answer {
  const n = values.length;
  if (n === 0) return noValue;
  const rank = k * (n + 1);
  if (rank < 1) return small;
  if (rank > n) return large;
  const low = Math.floor(rank);
  const value = values[low - 1]!;
  return low < n ? value + (rank - low) * (values[low]! - value) : value;
}

/** Functions that need a range in order, on arguments that are coerced already. */
export const ordered = {
  percentile: ofSorted(inclusive),
  percentileExclusive: ofSorted(exclusive),
  quartile: (range: Range, quarter: number): Answer => {
    const q = Math.trunc(quarter);
    return q < 0 ? small : q > 4 ? large : ofSorted(inclusive)(range, q / 4);
  },
  quartileExclusive: (range: Range, quarter: number): Answer => {
    const q = Math.trunc(quarter);
    return q < 1 ? small : q > 3 ? large : ofSorted(exclusive)(range, q / 4);
  },
  kthLargest: ofSorted((values, k) => {
    const n = Math.trunc(k);
    return n > values.length ? large : values[values.length - n]!;
  }),
  kthSmallest: ofSorted((values, k) => {
    const n = Math.trunc(k);
    return n > values.length ? large : values[n - 1]!;
  }),
  median: (range: Range): Answer => {
    const values = sortedNumbersOf(range);
    if (isIssue(values)) return values;
    const n = values.length;
    if (n === 0) return noValue;
    return n % 2 === 0 ? (values[n / 2 - 1]! + values[n / 2]!) / 2 : values[(n - 1) / 2]!;
  },
} as const;
