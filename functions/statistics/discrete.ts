/**
 * Probabilities of counts: Poisson, binomial, negative binomial and hypergeometric, single values by Loader's saddle point
 * and sums by the incomplete gamma and beta functions, so that large counts take no longer than small ones.
 */
import { exp } from '../core/elementary/exp.ts';
import { log1p } from '../core/elementary/log1p.ts';
import { pow } from '../core/elementary/pow.ts';
import { betaTails, betaWeight } from './beta.ts';
import { gammaTails, gammaWeight } from './gamma.ts';

/** Probability of exactly `k` events where `mean` are expected. */
export const poissonAt = (k: number, mean: number): number =>
  k === 0 ? exp(-mean) : mean === 0 ? 0 : gammaWeight(k, mean);

/** Probability of at most `k` events. */
export const poissonUpTo = (k: number, mean: number): number => gammaTails(k + 1, mean).above;

/** Probability of exactly `k` of `n`, each with probability `p`. */
export function binomialAt(k: number, n: number, p: number): number {
  if (p === 0 || p === 1) return k === n * p ? 1 : 0;
  if (k === 0) return exp(n * log1p(-p));
  if (k === n) return pow(p, n);
  return betaWeight(p, 1 - p, k, n - k);
}

/** Probability of at most `k` of `n`. */
export const binomialUpTo = (k: number, n: number, p: number): number =>
  k >= n ? 1 : betaTails(1 - p, p, n - k, k + 1).below;

/** The smallest count that is not exceeded with a probability of `share` or more. */
export function binomialQuantile(n: number, p: number, share: number): number {
  let below = -1;
  let enough = n;
  while (enough > below + 1) {
    const middle = Math.floor((below + enough) / 2);
    if (binomialUpTo(middle, n, p) >= share) enough = middle;
    else below = middle;
  }
  return enough;
}

/** Probability of exactly `failures` before success number `successes`. */
export function negativeBinomialAt(failures: number, successes: number, p: number): number {
  if (failures === 0) return pow(p, successes);
  if (p === 0 || p === 1) return 0;
  return (successes / (successes + failures)) * betaWeight(p, 1 - p, successes, failures);
}

/** Probability of at most `failures`. */
export const negativeBinomialUpTo = (failures: number, successes: number, p: number): number =>
  betaTails(p, 1 - p, successes, failures + 1).below;

/** Probability of exactly `k` marked ones among `drawn` out of `all`, `marked` of them marked. */
export function hypergeometricAt(k: number, drawn: number, marked: number, all: number): number {
  if (drawn === all) return k === marked ? 1 : 0;
  const p = drawn / all;
  return (binomialAt(k, marked, p) * binomialAt(drawn - k, all - marked, p)) / binomialAt(drawn, all, p);
}

/** Probability of at most `k` marked ones: from k away from the middle, until nothing is added. */
export function hypergeometricUpTo(k: number, drawn: number, marked: number, all: number): number {
  const lowest = Math.max(0, drawn + marked - all);
  const highest = Math.min(drawn, marked);
  if (k >= highest) return 1;
  const downwards = k * all < drawn * marked;
  let term = 1;
  let sum = downwards ? 1 : 0;
  for (let j = k; downwards ? j > lowest : j < highest; ) {
    const up = downwards ? j - 1 : j;
    const ratio = ((marked - up) * (drawn - up)) / ((up + 1) * (all - marked - drawn + up + 1));
    term = downwards ? term / ratio : term * ratio;
    sum += term;
    j += downwards ? -1 : 1;
    if (term < sum * 1e-17) break;
  }
  const share = sum * hypergeometricAt(k, drawn, marked, all);
  return downwards ? share : 1 - share;
}
