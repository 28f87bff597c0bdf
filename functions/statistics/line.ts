import { square } from '../core/elementary/pow.ts';
import type { Pairs } from './columns.ts';
import { mean } from './describe.ts';

/** Least-squares line y = intercept + slope · x. */
export interface Line {
  readonly slope: number;
  readonly intercept: number;
  readonly n: number;
  readonly meanX: number;
  /** Sum of squared deviations of x, and of y. */
  readonly sxx: number;
  readonly syy: number;
  /** Sum of squared residuals. */
  readonly rss: number;
}

/**
 * Fits from centred values; the residuals are summed one by one, not taken as a difference of large sums.
 * With one distinct x the slope is NaN.
 */
export function lineThrough({ a: x, b: y, n }: Pairs): Line {
  const meanX = mean(x);
  const meanY = mean(y);
  let sxx = 0;
  let sxy = 0;
  let syy = 0;
  for (let i = 0; i < n; i++) {
    const dx = x[i]! - meanX;
    const dy = y[i]! - meanY;
    sxx += dx * dx;
    sxy += dx * dy;
    syy += dy * dy;
  }
  const slope = sxy / sxx;
  let rss = 0;
  for (let i = 0; i < n; i++) {
    const residual = y[i]! - meanY - slope * (x[i]! - meanX);
    rss += residual * residual;
  }
  return { slope, intercept: meanY - slope * meanX, n, meanX, sxx, syy, rss };
}

/** Standard error of estimate √(rss/(n − 2)). */
export const errorOfEstimate = ({ rss, n }: Line): number => Math.sqrt(rss / (n - 2));

/** Half the width of a prediction interval for one new value at x, for a given t. */
export const predictionMargin = (line: Line, x: number, t: number): number =>
  t * errorOfEstimate(line) * Math.sqrt(1 + 1 / line.n + square(x - line.meanX) / line.sxx);

/** True when all values are the same number. */
export function allEqual(values: ArrayLike<number>): boolean {
  for (let i = 1; i < values.length; i++) if (values[i] !== values[0]) return false;
  return true;
}
