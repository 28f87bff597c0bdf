import { highOf, LN2_HIGH, LN2_REST, withHigh } from './words.ts';

/** ln(1 + x), exact near 0, the same bits everywhere. Port of fdlibm’s s_log1p.c. */
export function log1p(x: number): number {
  if (!(x >= -1)) return Number.NaN;
  if (x === -1) return Number.NEGATIVE_INFINITY;
  if (x === Number.POSITIVE_INFINITY || x === 0) return x;
  const size = Math.abs(x);
  if (size < 1.862645149230957e-9) return size < 5.551115123125783e-17 ? x : x - x * x * 0.5;
  let k = 0;
  let f = x;
  let high = 1;
  let lost = 0;
  if (x >= 0.41421356237309503 || x <= -0.2928932188134525) {
    let u = x;
    if (size < 9007199254740992) {
      u = 1 + x;
      high = highOf(u);
      k = (high >> 20) - 1023;
      lost = (k > 0 ? 1 - (u - x) : x - (u - 1)) / u;
    } else {
      high = highOf(u);
      k = (high >> 20) - 1023;
    }
    high &= 0x000fffff;
    if (high < 0x6a09e) {
      u = withHigh(u, high | 0x3ff00000);
    } else {
      k += 1;
      u = withHigh(u, high | 0x3fe00000);
      high = (0x00100000 - high) >> 2;
    }
    f = u - 1;
  }
  const half = 0.5 * f * f;
  if (high === 0) {
    if (f === 0) return k * LN2_HIGH + (lost + k * LN2_REST);
    const near = half * (1 - 0.6666666666666666 * f);
    return k === 0 ? f - near : k * LN2_HIGH - (near - (k * LN2_REST + lost) - f);
  }
  const s = f / (2 + f);
  const z = s * s;
  const tail =
    z *
    (0.6666666666666735 +
      z *
        (0.3999999999940942 +
          z *
            (0.2857142874366239 +
              z *
                (0.22222198432149784 +
                  z * (0.1818357216161805 + z * (0.15313837699209373 + z * 0.14798198605116586))))));
  return k === 0
    ? f - (half - s * (half + tail))
    : k * LN2_HIGH - (half - (s * (half + tail) + (k * LN2_REST + lost)) - f);
}

/** Inverse hyperbolic tangent. Port of fdlibm’s e_atanh.c. */
export function atanh(x: number): number {
  const size = Math.abs(x);
  const half =
    size < 0.5
      ? 0.5 * log1p(2 * size + (2 * size * size) / (1 - size))
      : 0.5 * log1p((2 * size) / (1 - size));
  return x < 0 ? -half : half;
}
