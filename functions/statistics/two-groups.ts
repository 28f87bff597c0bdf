import { square } from '../core/elementary/pow.ts';
import type { Column } from './columns.ts';
import { tOf, tTwoSided } from './distributions.ts';

/** SD of two groups together, divisor n₁ + n₂ − 2. */
export function pooledSd(a: Column, b: Column): number {
  const squares = (a.n - 1) * square(a.sd) + (b.n - 1) * square(b.sd);
  return Math.sqrt(squares / (a.n + b.n - 2));
}

export interface Welch {
  readonly difference: number;
  readonly se: number;
  readonly t: number;
  readonly df: number;
}

/** Unequal-variance comparison of mean a − mean b; Welch 1947, Biometrika 34:28–35, degrees of freedom by Satterthwaite. */
export function welch(a: Column, b: Column): Welch {
  const va = square(a.sd) / a.n;
  const vb = square(b.sd) / b.n;
  const se = Math.sqrt(va + vb);
  const difference = a.mean - b.mean;
  return {
    difference,
    se,
    t: difference / se,
    df: square(va + vb) / (square(va) / (a.n - 1) + square(vb) / (b.n - 1)),
  };
}

export const welchP = ({ t, df }: Welch): number => tTwoSided(t, df);

export function welchInterval({ difference, se, df }: Welch, confidence = 0.95): readonly [number, number] {
  const margin = tOf(confidence, df) * se;
  return [difference - margin, difference + margin];
}
