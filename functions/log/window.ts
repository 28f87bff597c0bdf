import { pow, square } from '../core/elementary/pow.ts';
import type { Series } from './log.ts';
import { between } from './log.ts';

/** The daily values of a window of `length` days, days without a row counting 0. */
export interface Window {
  /** Sums of the days that have rows. */
  readonly sums: Float64Array;
  readonly length: number;
  readonly total: number;
}

/** The window [from, to], both in. */
export function windowOf(series: Series, from: number, to: number): Window {
  const [start, end] = between(series.days, from, to);
  const sums = series.sums.subarray(start, end);
  let total = 0;
  for (const sum of sums) total += sum;
  return { sums, length: to - from + 1, total };
}

/** Smallest and largest daily value. */
function extremes({ sums, length }: Window): readonly [number, number] {
  let low = sums.length < length ? 0 : Number.POSITIVE_INFINITY;
  let high = sums.length < length ? 0 : Number.NEGATIVE_INFINITY;
  for (const sum of sums) {
    low = Math.min(low, sum);
    high = Math.max(high, sum);
  }
  return [low, high];
}

/** True when all days carry the same load, but for rounding in the sums of a day. */
export function equalDays(window: Window): boolean {
  const [low, high] = extremes(window);
  return high - low <= 1e-12 * Math.max(Math.abs(low), Math.abs(high));
}

/** SD of the daily values, in two passes; the days without a row enter by their number. */
export function dailySd(window: Window, divisor: 'sample' | 'population'): number {
  const { sums, length, total } = window;
  const mean = total / length;
  let squares = (length - sums.length) * mean * mean;
  for (const sum of sums) squares += square(sum - mean);
  return Math.sqrt(squares / (divisor === 'sample' ? length - 1 : length));
}

/**
 * Exponentially weighted mean of the daily values up to `on`, from the first logged day, which seeds it; a gap of g days
 * without a row lets it fall by (1 − λ)^g. Needs the first day to be `on` or earlier.
 */
export function weightedMean(series: Series, on: number, days: number): number {
  const keep = 1 - 2 / (days + 1);
  let at = series.days[0]!;
  let level = series.sums[0]!;
  for (let i = 1; i < series.days.length && series.days[i]! <= on; i++) {
    level = after(level, keep, series.days[i]! - at) + (1 - keep) * series.sums[i]!;
    at = series.days[i]!;
  }
  return after(level, keep, on - at);
}

/** What is left of a level after some days without load. Most gaps are a day or two, where a product is quickest. */
function after(level: number, keep: number, days: number): number {
  if (days > 8) return level * pow(keep, days);
  let left = level;
  for (let day = 0; day < days; day++) left *= keep;
  return left;
}
