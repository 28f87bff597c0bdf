import { hypot } from '../core/elementary/hypot.ts';
import { mean, squaredDeviations } from './describe.ts';
import { leastSquares } from './qr.ts';

export interface Regression {
  /** Intercept first (0 without a constant), then a slope for each column. */
  readonly coefficients: readonly number[];
  readonly n: number;
  /** Residual degrees of freedom: n less the columns, less 1 for the intercept. */
  readonly df: number;
  readonly rss: number;
  /** Sum of squares of y about its mean; about 0 without a constant. */
  readonly tss: number;
  /** Standard errors in the order of the coefficients; NaN without residual degrees of freedom. */
  readonly se: readonly number[];
}

/**
 * Least squares by Householder QR of the columns, centred and each scaled to length 1: the normal equations would lose
 * half the digits of the Longley data. Without a constant the columns are not centred. Answers undefined when a column is,
 * to nine digits, a sum of multiples of the others and the intercept.
 */
export function regress(
  y: Float64Array,
  rows: readonly Float64Array[],
  withConstant = true,
): Regression | undefined {
  const n = rows.length;
  const p = rows[0]?.length ?? 0;
  const given = Array.from({ length: p }, (_, j) => Float64Array.from(rows, (row) => row[j]!));
  const means = given.map((column) => (withConstant ? mean(column) : 0));
  const lengths = given.map((column) =>
    withConstant ? Math.sqrt(squaredDeviations(column)) : Math.sqrt(squares(column)),
  );
  if (lengths.some((length, j) => length === 0 || length <= 1e-12 * Math.abs(means[j]!))) return undefined;
  const meanY = withConstant ? mean(y) : 0;
  const columns = given.map((column, j) => column.map((v) => (v - means[j]!) / lengths[j]!));
  const { r, solution } = leastSquares(
    columns,
    y.map((v) => v - meanY),
  );
  if (r.some((row, j) => Math.abs(row[j]!) < 1e-9)) return undefined;
  const slopes = Array.from(solution, (b, j) => b / lengths[j]!);
  let rss = 0;
  rows.forEach((row, i) => {
    let residual = y[i]! - meanY;
    row.forEach((v, j) => {
      residual -= slopes[j]! * (v - means[j]!);
    });
    rss += residual * residual;
  });
  const df = n - p - (withConstant ? 1 : 0);
  const see = df > 0 ? Math.sqrt(rss / df) : Number.NaN;
  const [first, ...others] = standardErrors(invertUpper(r, p), means, lengths, n, see);
  return {
    coefficients: [slopes.reduce((sum, b, j) => sum - b * means[j]!, meanY), ...slopes],
    n,
    df,
    rss,
    tss: withConstant ? squaredDeviations(y) : squares(y),
    se: [withConstant ? first! : Number.NaN, ...others],
  };
}

const squares = (values: Float64Array): number => values.reduce((sum, v) => sum + v * v, 0);

/** Inverse of an upper triangular matrix, row by row. */
function invertUpper(r: readonly Float64Array[], p: number): number[][] {
  const inverse = Array.from({ length: p }, () => new Array<number>(p).fill(0));
  for (let j = 0; j < p; j++) {
    inverse[j]![j] = 1 / r[j]![j]!;
    for (let i = j - 1; i >= 0; i--) {
      let sum = 0;
      for (let l = i + 1; l <= j; l++) sum += r[i]![l]! * inverse[l]![j]!;
      inverse[i]![j] = -sum / r[i]![i]!;
    }
  }
  return inverse;
}

function standardErrors(
  inverse: readonly (readonly number[])[],
  means: readonly number[],
  lengths: readonly number[],
  n: number,
  see: number,
): number[] {
  const slopes = inverse.map((row, j) => (see * hypot(...row)) / lengths[j]!);
  // The intercept is the mean of y less the slopes times the means: its spread adds the slopes' joint one.
  const joint = means.map((_, l) =>
    inverse.reduce((sum, row, j) => sum + (means[j]! / lengths[j]!) * row[l]!, 0),
  );
  return [see * Math.sqrt(1 / n + joint.reduce((sum, v) => sum + v * v, 0)), ...slopes];
}
