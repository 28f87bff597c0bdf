import { exp } from './exp.ts';
import { expm1 } from './expm1.ts';
import { log } from './log.ts';
import { log1p } from './log1p.ts';

// Hyperbolic functions and their inverses but tanh and atanh, the same bits everywhere. Ports of fdlibm’s e_sinh.c, e_cosh.c, s_asinh.c, e_acosh.c.

/** e^size / 2, where e^size alone may be too large. */
function halfExp(size: number): number {
  if (size <= 709.782712893384) return 0.5 * exp(size);
  const w = exp(0.5 * size);
  return 0.5 * w * w;
}

/** Hyperbolic sine. */
export function sinh(x: number): number {
  const size = Math.abs(x);
  if (size < 3.725290298461914e-9) return x;
  let value: number;
  if (size < 22) {
    const t = expm1(size);
    value = size < 1 ? 0.5 * (2 * t - (t * t) / (t + 1)) : 0.5 * (t + t / (t + 1));
  } else value = halfExp(size);
  return x < 0 ? -value : value;
}

/** Hyperbolic cosine. */
export function cosh(x: number): number {
  const size = Math.abs(x);
  if (size < 0.5 * Math.LN2) {
    const t = expm1(size);
    return 1 + (t * t) / (2 + 2 * t);
  }
  if (!(size < 22)) return halfExp(size);
  const t = exp(size);
  return 0.5 * t + 0.5 / t;
}

/** Inverse hyperbolic sine. */
export function asinh(x: number): number {
  const size = Math.abs(x);
  if (size < 3.725290298461914e-9) return x;
  const square = size * size;
  const value =
    size > 268435456
      ? log(size) + Math.LN2
      : size > 2
        ? log(2 * size + 1 / (Math.sqrt(square + 1) + size))
        : log1p(size + square / (1 + Math.sqrt(1 + square)));
  return x < 0 ? -value : value;
}

/** Inverse hyperbolic cosine, of 1 and more. */
export function acosh(x: number): number {
  if (!(x >= 1)) return Number.NaN;
  if (x > 268435456) return log(x) + Math.LN2;
  if (x > 2) return log(2 * x - 1 / (x + Math.sqrt(x * x - 1)));
  const t = x - 1;
  return log1p(t + Math.sqrt(2 * t + t * t));
}
