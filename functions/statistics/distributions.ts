import { exp } from '../core/elementary/exp.ts';
import { log1p } from '../core/elementary/log1p.ts';
import { type BetaTails, betaRatio, betaTails, stirlingError } from './beta.ts';
import { gammaQuantile, gammaTails } from './gamma.ts';
import { normalQuantile } from './normal.ts';

export { normalBelow, normalBetween, normalDensity, normalQuantile } from './normal.ts';

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
export const tTwoSided = (t: number, df: number): number => tTails(t, df).above;

/** Share of Student’s t nearer to 0 than t, and of what is farther off. */
function tTails(t: number, df: number): BetaTails {
  const ratio = (t / df) * t;
  return ratio === Infinity
    ? { below: 1, above: 0, slope: 0 }
    : betaTails(ratio / (1 + ratio), 1 / (1 + ratio), 0.5, df / 2);
}

/** Probability that Student’s t stays below t; a small one keeps its digits. */
export function tBelow(t: number, df: number): number {
  const { above, below } = tTails(t, df);
  return t < 0 ? above / 2 : 0.5 + below / 2;
}

export function tDensity(t: number, df: number): number {
  // flat about 0, where the slope by the logarithm of t² has no value
  const at = Math.max(Math.abs(t), 1e-100);
  return tTails(at, df).slope / at;
}

/** The t that both tails together pass with probability p. */
export function tQuantileTwoSided(p: number, df: number): number {
  if (p === 1) return 0;
  const ratio = p < 0.5 ? betaRatio('above', p, 0.5, df / 2) : betaRatio('below', 1 - p, 0.5, df / 2);
  return Math.sqrt(df * ratio);
}

/** Both tails of F at x ≥ 0. */
export function fTails(
  x: number,
  d1: number,
  d2: number,
): { readonly below: number; readonly above: number } {
  return fBeta(x, d1, d2);
}

function fBeta(x: number, d1: number, d2: number): BetaTails {
  const ratio = (x * d1) / d2;
  return betaTails(ratio / (1 + ratio), 1 / (1 + ratio), d1 / 2, d2 / 2);
}

/** Density of F; infinite at 0 with one degree of freedom above. */
export function fDensity(x: number, d1: number, d2: number): number {
  if (x === 0) return d1 < 2 ? Infinity : d1 === 2 ? 1 : 0;
  return fBeta(x, d1, d2).slope / x;
}

/** The value that F passes with probability p. */
export function fQuantileAbove(p: number, d1: number, d2: number): number {
  const ratio = p < 0.5 ? betaRatio('above', p, d1 / 2, d2 / 2) : betaRatio('below', 1 - p, d1 / 2, d2 / 2);
  return (ratio * d2) / d1;
}

/** Both tails of chi-squared. */
export function chiSquaredTails(x: number, df: number): { readonly below: number; readonly above: number } {
  return gammaTails(df / 2, x / 2);
}

/** Density of chi-squared; infinite at 0 with one degree of freedom. */
export function chiSquaredDensity(x: number, df: number): number {
  if (x < 0) return 0;
  if (x === 0) return df < 2 ? Infinity : df === 2 ? 0.5 : 0;
  return gammaTails(df / 2, x / 2).slope / x;
}

/** The value that chi-squared stays below, or passes, with probability p. */
export function chiSquaredQuantile(tail: 'below' | 'above', p: number, df: number): number {
  const other = tail === 'below' ? 'above' : 'below';
  return 2 * (p < 0.5 ? gammaQuantile(tail, p, df / 2) : gammaQuantile(other, 1 - p, df / 2));
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
  const logOfIt = (z - 1) * -log1p(-0.5 / z) - 0.5;
  // stirlingError is that of Γ(n + 1); Γ(z) = Γ(z + 1)/z has the same.
  return exp(logOfIt + stirlingError(z) - stirlingError(z - 0.5));
}
