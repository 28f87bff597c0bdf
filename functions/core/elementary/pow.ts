import { highOf, powerOfTwo, scaled, shortened, withHigh } from './words.ts';

// Powers, the same bits everywhere. Port of fdlibm’s e_pow.c: log2 x in two parts, times y, and 2 to that.

/** log2 of the last size, in two parts. */
let log2High = 0;
let log2Rest = 0;

/** Fills the two parts of log2 x for a finite x above 0. */
function splitLog2(x: number): void {
  let n = 0;
  let m = x;
  if (m < 2.2250738585072014e-308) {
    m *= 9007199254740992;
    n = -53;
  }
  let high = highOf(m);
  n += (high >> 20) - 1023;
  const fraction = high & 0x000fffff;
  high = fraction | 0x3ff00000;
  let k = 0;
  if (fraction >= 0xbb67a) {
    n += 1;
    high -= 0x00100000;
  } else if (fraction > 0x3988e) {
    k = 1;
  }
  m = withHigh(m, high);
  const middle = k === 0 ? 1 : 1.5;
  const u = m - middle;
  const v = 1 / (m + middle);
  const s = u * v;
  const sHigh = shortened(s);
  const tHigh = withHigh(0, ((high >> 1) | 0x20000000) + 0x00080000 + (k << 18));
  const tRest = m - (tHigh - middle);
  const sRest = v * (u - sHigh * tHigh - sHigh * tRest);
  const s2 = s * s;
  const series =
    s2 *
      s2 *
      (0.5999999999999946 +
        s2 *
          (0.4285714285785502 +
            s2 *
              (0.33333332981837743 +
                s2 * (0.272728123808534 + s2 * (0.23066074577556175 + s2 * 0.20697501780033842))))) +
    sRest * (sHigh + s);
  const square = sHigh * sHigh;
  const top = shortened(3 + square + series);
  const topRest = series - (top - 3 - square);
  const first = sHigh * top;
  const second = sRest * top + topRest * s;
  const high2 = shortened(first + second);
  const rest2 = second - (high2 - first);
  const z = 0.9617967009544373 * high2;
  const zRest =
    -7.028461650952758e-9 * high2 + rest2 * 0.9617966939259756 + (k === 0 ? 0 : 1.350039202129749e-8);
  const shift = k === 0 ? 0 : 0.5849624872207642;
  log2High = shortened(z + zRest + shift + n);
  log2Rest = zRest - (log2High - n - shift - z);
}

/** 2 to a power given in two parts, of size up to 1075. */
function powerOf(high: number, rest: number): number {
  const whole = Math.abs(high + rest) > 0.5 ? Math.floor(high + rest + 0.5) : 0;
  const p = high - whole;
  const t = shortened(rest + p);
  const u = t * 0.6931471824645996;
  const v = (rest - (t - p)) * Math.LN2 + t * -1.904654299957768e-9;
  const z = u + v;
  const w = v - (z - u);
  const q = z * z;
  const c =
    z -
    q *
      (0.16666666666666602 +
        q *
          (-0.0027777777777015593 +
            q * (6.613756321437934e-5 + q * (-1.6533902205465252e-6 + q * 4.1381367970572385e-8))));
  const r = (z * c) / (c - 2) - (w + z * w);
  const value = 1 - (r - z);
  return whole >= -1021 && whole < 1023 ? value * powerOfTwo(whole) : scaled(value, whole);
}

/** x to the power y, error below 1 in the last place; whole powers up to 4 are products. As IEEE 754, but 1 to no power is NaN. */
export function pow(x: number, y: number): number {
  switch (y) {
    case 0:
      return 1;
    case 1:
      return x;
    case 2:
      return x * x;
    case 3:
      return x * x * x;
    case 4:
      return x * x * (x * x);
    case -1:
      return 1 / x;
    case 0.5:
      if (x > Number.NEGATIVE_INFINITY && x !== 0) return Math.sqrt(x);
  }
  if (Number.isNaN(x) || Number.isNaN(y)) return Number.NaN;
  const size = Math.abs(x);
  if (Math.abs(y) === Number.POSITIVE_INFINITY) {
    if (size === 1) return Number.NaN;
    return size > 1 === y > 0 ? Number.POSITIVE_INFINITY : 0;
  }
  const negative = (x < 0 || Object.is(x, -0)) && isOdd(y);
  if (size === 0 || size === Number.POSITIVE_INFINITY) {
    const value = (size === 0) === y < 0 ? Number.POSITIVE_INFINITY : 0;
    return negative ? -value : value;
  }
  if (x < 0 && !Number.isInteger(y)) return Number.NaN;
  const value = size === 1 ? 1 : (ofWhole(size, y) ?? ofSize(size, y));
  return negative ? -value : value;
}

/** A negative power of a whole number whose positive power is exact: its reciprocal is the nearest double (10^−11 is 1e−11). */
function ofWhole(size: number, y: number): number | undefined {
  if (y >= 0 || y < -53 || !Number.isInteger(y) || !Number.isInteger(size)) return undefined;
  const power = pow(size, -y);
  return power < 9007199254740992 ? 1 / power : undefined;
}

const isOdd = (y: number): boolean =>
  Number.isInteger(y) && Math.abs(y) < 9007199254740992 && !Number.isInteger(y * 0.5);

function ofSize(size: number, y: number): number {
  // beyond 2^64 any base but 1 is out of range already
  if (Math.abs(y) > 1.8446744073709552e19) return size > 1 === y > 0 ? Number.POSITIVE_INFINITY : 0;
  splitLog2(size);
  const yHigh = shortened(y);
  const rest = (y - yHigh) * log2High + y * log2Rest;
  const high = yHigh * log2High;
  const power = high + rest;
  if (power >= 1024 && (power > 1024 || rest + 8.008566259537294e-17 > power - high))
    return Number.POSITIVE_INFINITY;
  if (power <= -1075 && (power < -1075 || rest <= power - high)) return 0;
  return powerOf(high, rest);
}

export const square = (x: number): number => x * x;
