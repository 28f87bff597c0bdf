/** Up to this many pairs every slope is written down; beyond it they are only counted. */
const LISTED = 2_000_000;

/**
 * Median of the slopes between all pairs of points with different x; pairs of one x are left out (Theil 1950, Sen 1968).
 * NaN when there is no such pair. Long series are searched for the median slope without listing n² of them.
 */
export function theilSen(x: Float64Array, y: Float64Array): number {
  const order = Array.from(x.keys()).sort((i, j) => x[i]! - x[j]! || y[i]! - y[j]!);
  const xs = Float64Array.from(order, (i) => x[i]!);
  const ys = Float64Array.from(order, (i) => y[i]!);
  const pairs = pairsWithDifferentX(xs);
  if (pairs === 0) return Number.NaN;
  const low = Math.floor((pairs - 1) / 2);
  const high = Math.floor(pairs / 2);
  if (pairs > LISTED) {
    const first = slopeOfRank(xs, ys, low);
    return low === high ? first : (first + slopeOfRank(xs, ys, high)) / 2;
  }
  const slopes = listSlopes(xs, ys, pairs);
  const first = select(slopes, low);
  return low === high ? first : (first + select(slopes, high)) / 2;
}

function pairsWithDifferentX(xs: Float64Array): number {
  let pairs = 0;
  for (let start = 0; start < xs.length; ) {
    let end = start;
    while (end < xs.length && xs[end] === xs[start]) end++;
    pairs += (end - start) * (xs.length - end);
    start = end;
  }
  return pairs;
}

function listSlopes(xs: Float64Array, ys: Float64Array, pairs: number): Float64Array {
  const slopes = new Float64Array(pairs);
  let at = 0;
  for (let i = 0; i < xs.length; i++)
    for (let j = i + 1; j < xs.length; j++)
      if (xs[j] !== xs[i]) slopes[at++] = (ys[j]! - ys[i]!) / (xs[j]! - xs[i]!);
  return slopes;
}

/** The value of rank k (from 0), by partition in place. */
function select(values: Float64Array, k: number): number {
  let left = 0;
  let right = values.length - 1;
  while (left < right) {
    const pivot = values[(left + right) >> 1]!;
    let i = left;
    let j = right;
    while (i <= j) {
      while (values[i]! < pivot) i++;
      while (values[j]! > pivot) j--;
      if (i <= j) {
        const other = values[i]!;
        values[i++] = values[j]!;
        values[j--] = other;
      }
    }
    if (k <= j) right = j;
    else if (k >= i) left = i;
    else break;
  }
  return values[k]!;
}

/**
 * The slope of rank k by bisection: a pair has a slope below m exactly when it stands in the wrong order of y − m·x, so
 * counting inversions counts slopes.
 */
function slopeOfRank(xs: Float64Array, ys: Float64Array, k: number): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  // The extreme slopes are among neighbours in x, taking the ends of each group of one x.
  for (let i = 1, start = 0; i < xs.length; i++) {
    if (xs[i] === xs[i - 1]) continue;
    let end = i;
    while (end + 1 < xs.length && xs[end + 1] === xs[i]) end++;
    const run = xs[i]! - xs[start]!;
    low = Math.min(low, (ys[i]! - ys[i - 1]!) / run);
    high = Math.max(high, (ys[end]! - ys[start]!) / run);
    start = i;
  }
  const residuals = new Float64Array(xs.length);
  const spare = new Float64Array(xs.length);
  const fine = (high - low) * 1e-16;
  while (true) {
    const middle = low + (high - low) / 2;
    if (high - low <= fine || middle <= low || middle >= high) return Math.abs(middle) <= fine ? 0 : middle;
    for (let i = 0; i < xs.length; i++) residuals[i] = ys[i]! - middle * (xs[i]! - xs[0]!);
    if (inversions(residuals, spare) <= k) low = middle;
    else high = middle;
  }
}

/** Pairs in descending order, counted by merge sort; sorts `values`. */
function inversions(values: Float64Array, spare: Float64Array): number {
  let count = 0;
  for (let width = 1; width < values.length; width *= 2) {
    for (let start = 0; start < values.length; start += 2 * width) {
      const middle = Math.min(start + width, values.length);
      const end = Math.min(start + 2 * width, values.length);
      for (let i = start, j = middle, at = start; at < end; at++) {
        if (i < middle && (j >= end || values[i]! <= values[j]!)) spare[at] = values[i++]!;
        else {
          spare[at] = values[j++]!;
          count += middle - i;
        }
      }
    }
    values.set(spare);
  }
  return count;
}
