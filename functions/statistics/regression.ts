import { Matrix, QrDecomposition } from 'ml-matrix';
import { mean, squaredDeviations } from './describe.ts';

export interface Regression {
  /** Intercept first, then a slope for each column. */
  readonly coefficients: readonly number[];
  readonly n: number;
  /** Residual degrees of freedom, n − columns − 1. */
  readonly df: number;
  readonly rss: number;
  readonly tss: number;
  /** Standard errors in the order of the coefficients; NaN without residual degrees of freedom. */
  readonly se: readonly number[];
}

/**
 * Least squares with an intercept by Householder QR of the centred columns, each scaled to length 1: the normal equations
 * would lose half the digits of the Longley data. Answers undefined when a column is, to nine digits, a sum of multiples
 * of the others and the intercept.
 */
export function regress(y: Float64Array, rows: readonly Float64Array[]): Regression | undefined {
  const n = rows.length;
  const p = rows[0]?.length ?? 0;
  const means = Array.from({ length: p }, (_, j) => mean(rows.map((row) => row[j]!)));
  const lengths = means.map((_, j) => Math.sqrt(squaredDeviations(rows.map((row) => row[j]!))));
  if (lengths.some((length, j) => length <= 1e-12 * Math.abs(means[j]!) || length === 0)) return undefined;
  const meanY = mean(y);
  const x = new Matrix(rows.map((row) => Array.from(row, (v, j) => (v - means[j]!) / lengths[j]!)));
  const qr = new QrDecomposition(x);
  const r = qr.upperTriangularMatrix;
  for (let j = 0; j < p; j++) if (Math.abs(r.get(j, j)) < 1e-9) return undefined;
  const scaled = qr.solve(Matrix.columnVector(Array.from(y, (v) => v - meanY))).to1DArray();
  const slopes = scaled.map((b, j) => b / lengths[j]!);
  let rss = 0;
  rows.forEach((row, i) => {
    let residual = y[i]! - meanY;
    row.forEach((v, j) => {
      residual -= slopes[j]! * (v - means[j]!);
    });
    rss += residual * residual;
  });
  const df = n - p - 1;
  const intercept = slopes.reduce((sum, b, j) => sum - b * means[j]!, meanY);
  return {
    coefficients: [intercept, ...slopes],
    n,
    df,
    rss,
    tss: squaredDeviations(y),
    se: standardErrors(invertUpper(r, p), means, lengths, n, df > 0 ? Math.sqrt(rss / df) : Number.NaN),
  };
}

/** Inverse of an upper triangular matrix, row by row. */
function invertUpper(r: Matrix, p: number): number[][] {
  const inverse = Array.from({ length: p }, () => new Array<number>(p).fill(0));
  for (let j = 0; j < p; j++) {
    inverse[j]![j] = 1 / r.get(j, j);
    for (let i = j - 1; i >= 0; i--) {
      let sum = 0;
      for (let l = i + 1; l <= j; l++) sum += r.get(i, l) * inverse[l]![j]!;
      inverse[i]![j] = -sum / r.get(i, i);
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
  const slopes = inverse.map((row, j) => (see * Math.hypot(...row)) / lengths[j]!);
  // The intercept is the mean of y less the slopes times the means: its spread adds the slopes' joint one.
  const joint = means.map((_, l) =>
    inverse.reduce((sum, row, j) => sum + (means[j]! / lengths[j]!) * row[l]!, 0),
  );
  return [see * Math.sqrt(1 / n + joint.reduce((sum, v) => sum + v * v, 0)), ...slopes];
}
