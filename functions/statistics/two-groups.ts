import type { Column } from './columns.ts';
import { tOf, tTwoSided } from './distributions.ts';

/** SD of two groups together, divisor n₁ + n₂ − 2. */
export function pooledSd(a: Column, b: Column): number {
  const squares = (a.n - 1) * a.sd ** 2 + (b.n - 1) * b.sd ** 2;
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
  const va = a.sd ** 2 / a.n;
  const vb = b.sd ** 2 / b.n;
  const se = Math.sqrt(va + vb);
  const difference = a.mean - b.mean;
  return {
    difference,
    se,
    t: difference / se,
    df: (va + vb) ** 2 / (va ** 2 / (a.n - 1) + vb ** 2 / (b.n - 1)),
  };
}

export const welchP = ({ t, df }: Welch): number => tTwoSided(t, df);

export function welchInterval({ difference, se, df }: Welch, confidence = 0.95): readonly [number, number] {
  const margin = tOf(confidence, df) * se;
  return [difference - margin, difference + margin];
}
