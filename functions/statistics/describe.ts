/**
 * Mean and spread of numbers. Everything is taken as differences from the first value: equal values then give a spread of
 * exactly 0, and a large offset (NIST NumAcc4) costs no digits.
 */

/** Arithmetic mean. NaN for no values. */
export function mean(values: ArrayLike<number>): number {
  const first = values[0] ?? Number.NaN;
  let sum = 0;
  for (let i = 1; i < values.length; i++) sum += values[i]! - first;
  return first + sum / values.length;
}

/** Sum of squared deviations from the mean, in two passes with the rounding of the mean taken out. */
export function squaredDeviations(values: ArrayLike<number>): number {
  const first = values[0] ?? Number.NaN;
  const n = values.length;
  let shift = 0;
  for (let i = 1; i < n; i++) shift += values[i]! - first;
  shift /= n;
  let squares = 0;
  let rest = 0;
  for (let i = 0; i < n; i++) {
    const d = values[i]! - first - shift;
    squares += d * d;
    rest += d;
  }
  return Math.max(0, squares - (rest * rest) / n);
}

/** Standard deviation, divisor n − 1. NaN for fewer than two values. */
export function standardDeviation(values: ArrayLike<number>): number {
  return values.length < 2 ? Number.NaN : Math.sqrt(squaredDeviations(values) / (values.length - 1));
}

/** A copy in ascending order. */
export function ascending(values: Float64Array): Float64Array {
  return values.slice().sort();
}

/**
 * Quantile of ascending values by linear interpolation between order statistics, (n − 1)p + 1: definition 7 of
 * Hyndman & Fan 1996, Am Stat 50:361–365. NaN for no values.
 */
export function quantile(sorted: Float64Array, p: number): number {
  const at = (sorted.length - 1) * p;
  const low = Math.floor(at);
  const below = sorted[low] ?? Number.NaN;
  const above = sorted[Math.min(low + 1, sorted.length - 1)] ?? Number.NaN;
  return below + (at - low) * (above - below);
}

/** Median of ascending values. */
export const median = (sorted: Float64Array): number => quantile(sorted, 0.5);

/** Mean without `cut` values at each end of ascending values. */
export function trimmedMean(sorted: Float64Array, cut: number): number {
  return mean(sorted.subarray(cut, sorted.length - cut));
}

/** Median of the absolute deviations from the median, unscaled. */
export function medianDeviation(sorted: Float64Array): number {
  const middle = median(sorted);
  return median(sorted.map((v) => Math.abs(v - middle)).sort());
}
