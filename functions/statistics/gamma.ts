import { exp } from '../core/elementary/exp.ts';
import { log } from '../core/elementary/log.ts';
import { deviance, stirlingError } from './beta.ts';
import { gammaTailsOfLarge, LARGE } from './gamma-large.ts';

/** The incomplete gamma function and its inverse, on which χ², gamma and Poisson rest. */
export interface GammaTails {
  /** P(a, x) and its complement, the smaller of them with all its digits. */
  readonly below: number;
  readonly above: number;
  /** Derivative of P by the logarithm of x. */
  readonly slope: number;
}

/** x^a e^−x / Γ(a + 1) with all its digits for large a (Loader's saddle point); a > 0. */
export const gammaWeight = (a: number, x: number): number =>
  exp(-stirlingError(a) - deviance(a, x)) / Math.sqrt(2 * Math.PI * a);

/** The regularised incomplete gamma function of a > 0 and x with both tails. */
export function gammaTails(a: number, x: number): GammaTails {
  if (Number.isNaN(a + x)) return { below: Number.NaN, above: Number.NaN, slope: Number.NaN };
  if (x <= 0) return { below: 0, above: 1, slope: 0 };
  if (x === Number.POSITIVE_INFINITY) return { below: 1, above: 0, slope: 0 };
  const weight = gammaWeight(a, x);
  const slope = weight * a;
  if (a > LARGE) return { ...gammaTailsOfLarge(a, x), slope };
  if (x < a + 1) {
    const below = weight * series(a, x);
    return { below, above: 1 - below, slope };
  }
  const above = slope * fraction(a, x);
  return { below: 1 - above, above, slope };
}

/** 1 + x/(a + 1) + x²/((a + 1)(a + 2)) + …: all terms positive. */
function series(a: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let n = 1; n < 1_000_000; n++) {
    term *= x / (a + n);
    sum += term;
    if (term <= sum * 1e-17) break;
  }
  return sum;
}

/** Legendre's continued fraction of the upper tail (modified Lentz), for x ≥ a + 1. */
function fraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1e300;
  let d = 1 / b;
  let h = d;
  for (let i = 1; i < 1_000_000; i++) {
    const part = -i * (i - a);
    b += 2;
    d = 1 / (part * d + b);
    c = b + part / c;
    const step = c * d;
    h *= step;
    if (Math.abs(step - 1) < 3e-16) break;
  }
  return h;
}

/** The x at which a tail of P(a, x) has a given size: Newton steps on the logarithms, between bounds that close in. */
export function gammaQuantile(tail: 'below' | 'above', size: number, a: number): number {
  if (!(size > 0 && size < 1 && a > 0 && a < Infinity)) return Number.NaN;
  const sign = tail === 'below' ? 1 : -1;
  let low = -1400;
  let high = 700;
  let s = log(a);
  for (let step = 0; step < 200; step++) {
    const x = exp(s);
    const found = gammaTails(a, x);
    const value = found[tail];
    const off = log(value / size);
    if (off * sign < 0) low = s;
    else high = s;
    if (Math.abs(off) < 2e-16) return x;
    const newton = s - (off * value * sign) / found.slope;
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - s) <= 1e-16 * Math.max(1, Math.abs(s))) return exp(next);
    s = next;
  }
  return exp(s);
}
