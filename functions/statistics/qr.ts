import { hypot } from '../core/elementary/hypot.ts';

/** Least squares by Householder reflections: the triangle R of X = QR, and the solution of min |Xb − y|. */
export interface LeastSquares {
  /** Upper triangle, row by row. */
  readonly r: readonly Float64Array[];
  readonly solution: Float64Array;
}

/**
 * Takes the columns of X, each as long as y, and changes them. Householder 1958; Golub & Van Loan, Matrix Computations,
 * section 5.2. A column that depends on those before it leaves a 0 (but for rounding) on the diagonal of R.
 */
export function leastSquares(columns: readonly Float64Array[], y: Float64Array): LeastSquares {
  const n = y.length;
  const p = columns.length;
  const diagonal = new Float64Array(p);
  for (let k = 0; k < p; k++) {
    const v = columns[k]!;
    let length = 0;
    for (let i = k; i < n; i++) length = hypot(length, v[i]!);
    if (length === 0) continue;
    // Reflected to the side away from v[k], so that nothing cancels.
    if (v[k]! < 0) length = -length;
    for (let i = k; i < n; i++) v[i]! /= length;
    v[k]! += 1;
    diagonal[k] = -length;
    for (const target of [...columns.slice(k + 1), y]) reflect(target, v, k);
  }
  const r = columns.map((_, i) =>
    Float64Array.from(columns, (column, j) => (j < i ? 0 : j === i ? diagonal[i]! : column[i]!)),
  );
  const solution = new Float64Array(p);
  for (let i = p - 1; i >= 0; i--) {
    let rest = y[i]!;
    for (let j = i + 1; j < p; j++) rest -= r[i]![j]! * solution[j]!;
    solution[i] = rest / r[i]![i]!;
  }
  return { r, solution };
}

/** Reflects the part of a column from row k on; v is scaled so that v·v = 2 v[k]. */
function reflect(target: Float64Array, v: Float64Array, k: number): void {
  let dot = 0;
  for (let i = k; i < v.length; i++) dot += v[i]! * target[i]!;
  dot /= v[k]!;
  for (let i = k; i < v.length; i++) target[i]! -= dot * v[i]!;
}
