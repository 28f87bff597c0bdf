import { betaRatio, betaTails, stirlingError } from './beta.ts';
import { gammaQuantile } from './gamma.ts';
import { normalQuantile } from './normal.ts';

export { normalBelow, normalQuantile } from './normal.ts';

/** z of a two-sided interval: 1.959964 for a confidence of .95. */
export const zOf = (confidence: number): number => normalQuantile((1 + confidence) / 2);

/** The value that Student's t with `df` degrees of freedom (any positive number) stays below with probability p. */
export function tQuantile(p: number, df: number): number {
  if (p === 0.5) return 0;
  // t² is F with 1 and df degrees of freedom; its upper tail is twice that of t.
  const t = Math.sqrt(df * betaRatio('above', 2 * Math.min(p, 1 - p), 0.5, df / 2));
  return p < 0.5 ? -t : t;
}

/** t of a two-sided interval. */
export const tOf = (confidence: number, df: number): number => tQuantile((1 + confidence) / 2, df);

/** Two-sided p of Student's t; small p keep their digits. */
export function tTwoSided(t: number, df: number): number {
  const square = t * t;
  return betaTails(square / (df + square), df / (df + square), 0.5, df / 2).above;
}

/** The value that F with d1 and d2 degrees of freedom (any positive numbers) stays below with probability p. */
export function fQuantile(p: number, d1: number, d2: number): number {
  const ratio = p < 0.5 ? betaRatio('below', p, d1 / 2, d2 / 2) : betaRatio('above', 1 - p, d1 / 2, d2 / 2);
  return (ratio * d2) / d1;
}

/** The value that χ² with `df` degrees of freedom (any positive number) stays below (or above) with probability p. */
export const chiSquareQuantile = (tail: 'below' | 'above', p: number, df: number): number =>
  2 * gammaQuantile(tail, p, df / 2);

/**
 * Hedges' correction J(m) = Γ(m/2) / (√(m/2) Γ((m−1)/2)), exact for any m > 1 (Hedges 1981, J Educ Stat 6:107–128): the
 * two gamma functions by Stirling's formula, in which everything large cancels on paper.
 */
export function hedgesJ(m: number): number {
  const z = m / 2;
  const log = (z - 1) * -Math.log1p(-0.5 / z) - 0.5;
  // stirlingError is that of Γ(n + 1); Γ(z) = Γ(z + 1)/z has the same.
  return Math.exp(log + stirlingError(z) - stirlingError(z - 0.5));
}
