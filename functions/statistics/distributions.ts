import gammaln from '@stdlib/math-base-special-gammaln';
import fInverse from '@stdlib/stats-base-dists-f-quantile';
import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import normalInverse from '@stdlib/stats-base-dists-normal-quantile';
import tBelow from '@stdlib/stats-base-dists-t-cdf';
import tInverse from '@stdlib/stats-base-dists-t-quantile';

/** The value that a standard normal variable stays below with probability p. */
export const normalQuantile = (p: number): number => normalInverse(p, 0, 1);

/** The probability that a standard normal variable stays below z. */
export const normalBelow = (z: number): number => normalCdf(z, 0, 1);

/** z of a two-sided interval: 1.959964 for a confidence of .95. */
export const zOf = (confidence: number): number => normalQuantile((1 + confidence) / 2);

/** The value that Student's t with `df` degrees of freedom (any positive number) stays below with probability p. */
export const tQuantile = (p: number, df: number): number => tInverse(p, df);

/** t of a two-sided interval. */
export const tOf = (confidence: number, df: number): number => tQuantile((1 + confidence) / 2, df);

/** Two-sided p of Student's t. Taken from the lower tail, so that small p keep their digits. */
export const tTwoSided = (t: number, df: number): number => Math.min(1, 2 * tBelow(-Math.abs(t), df));

/** The value that F with d1 and d2 degrees of freedom (any positive numbers) stays below with probability p. */
export const fQuantile = (p: number, d1: number, d2: number): number => fInverse(p, d1, d2);

/**
 * Hedges' correction J(m) = Γ(m/2) / (√(m/2) Γ((m−1)/2)), exact (Hedges 1981, J Educ Stat 6:107–128). For many degrees
 * of freedom the difference of two large logarithms would lose digits; there the series of the ratio is exact to double
 * precision. Needs m > 1.
 */
export function hedgesJ(m: number): number {
  if (m <= 200) return Math.exp(gammaln(m / 2) - gammaln((m - 1) / 2)) / Math.sqrt(m / 2);
  const z = (m - 1) / 2;
  // Γ(z + ½)/Γ(z) = √z (1 − 1/8z + 1/128z² + 5/1024z³ − 21/32768z⁴ − 399/262144z⁵ + …)
  const series = 1 + (-1 / 8 + (1 / 128 + (5 / 1024 + (-21 / 32768 - 399 / 262144 / z) / z) / z) / z) / z;
  return Math.sqrt(z / (z + 0.5)) * series;
}
