import { tanh } from '../core/elementary/expm1.ts';
import { atanh } from '../core/elementary/log1p.ts';
import type { Pairs } from './columns.ts';
import { mean } from './describe.ts';
import { tTwoSided, zOf } from './distributions.ts';
import { tied } from './ties.ts';

/** Product-moment correlation; NaN when a side has no spread. A result within rounding of ±1 is ±1. */
export function pearson({ a, b, n }: Pairs): number {
  const meanA = mean(a);
  const meanB = mean(b);
  let saa = 0;
  let sbb = 0;
  let sab = 0;
  for (let i = 0; i < n; i++) {
    const da = a[i]! - meanA;
    const db = b[i]! - meanB;
    saa += da * da;
    sbb += db * db;
    sab += da * db;
  }
  const r = sab / (Math.sqrt(saa) * Math.sqrt(sbb));
  return 1 - Math.abs(r) < 1e-14 ? Math.sign(r) : r;
}

/** Ranks from 1; equal values, as far as a unit conversion leaves them equal, share the mean of their ranks. */
function meanRanks(values: Float64Array): Float64Array {
  const order = Array.from(values.keys()).sort((i, j) => values[i]! - values[j]!);
  const ranks = new Float64Array(values.length);
  for (let start = 0; start < order.length; ) {
    let end = start;
    while (end < order.length && tied(values[order[end]!]!, values[order[start]!]!)) end++;
    for (let k = start; k < end; k++) ranks[order[k]!] = (start + 1 + end) / 2;
    start = end;
  }
  return ranks;
}

/** Spearman's rank correlation: the correlation of the mean ranks. */
export const spearman = (pairs: Pairs): number =>
  pearson({ a: meanRanks(pairs.a), b: meanRanks(pairs.b), n: pairs.n });

/** Interval of a correlation by Fisher's z = atanh r with standard error 1/√(n − 3) (Fisher 1921, Metron 1:3–32). */
export function fisherInterval(r: number, n: number, confidence = 0.95): readonly [number, number] {
  if (Math.abs(r) === 1) return [r, r];
  const margin = zOf(confidence) / Math.sqrt(n - 3);
  const z = atanh(r);
  return [tanh(z - margin), tanh(z + margin)];
}

/** Two-sided p of r = 0 by Student's t with n − 2 degrees of freedom. */
export function correlationP(r: number, n: number): number {
  if (Math.abs(r) === 1) return 0;
  return tTwoSided(r * Math.sqrt((n - 2) / (1 - r * r)), n - 2);
}
