import { exp } from '../core/elementary/exp.ts';
import { log } from '../core/elementary/log.ts';

const ROOT_TWO_PI = Math.sqrt(2 * Math.PI);
export const normalDensity = (z: number): number => exp(-0.5 * z * z) / ROOT_TWO_PI;

/** The probability between 0 and z, 0 ≤ z < 3: φ(z)(z + z³/3 + z⁵/(3·5) + …), all terms positive. */
function fromMiddle(z: number): number {
  let term = z;
  let sum = z;
  for (let k = 3; term > sum * 1e-17; k += 2) {
    term *= (z * z) / k;
    sum += term;
  }
  return normalDensity(z) * sum;
}

/** The probability that a standard normal variable is above z, for z ≥ 0; keeps its digits far out. */
function above(z: number): number {
  if (z < 3) return 0.5 - fromMiddle(z);
  // Laplace's continued fraction φ(z)/(z + 1/(z + 2/(z + 3/(z + …)))), from the inside out.
  let tail = z;
  for (let k = 120; k > 0; k--) tail = z + k / tail;
  return normalDensity(z) / tail;
}

/** The probability that a standard normal variable is between 0 and z; negative below 0. Keeps its digits near 0. */
export function normalBetween(z: number): number {
  const size = Math.abs(z);
  const between = size < 3 ? fromMiddle(size) : 0.5 - above(size);
  return z < 0 ? -between : between;
}

/** The probability that a standard normal variable stays below z. */
export const normalBelow = (z: number): number => (z < 0 ? above(-z) : 1 - above(z));

/**
 * The value that a standard normal variable stays below with probability p, 0 < p < 1: three steps of Halley's method on
 * the logarithm of the nearer tail from the start of Abramowitz & Stegun 26.2.23 (good to 4.5e-4).
 */
export function normalQuantile(p: number): number {
  const tail = Math.min(p, 1 - p);
  if (!(tail > 0))
    return tail === 0 ? (p < 0.5 ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY) : Number.NaN;
  const t = Math.sqrt(-2 * log(tail));
  let z =
    t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
  for (let step = 0; step < 3; step++) {
    const off = (above(Math.max(0, z)) - tail) / normalDensity(z);
    z = Math.max(0, z + off / (1 - 0.5 * z * off));
  }
  return p < 0.5 ? -z : z;
}
