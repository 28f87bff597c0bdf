import { highOf, LN2_HIGH, LN2_REST, withHigh } from './words.ts';

const FRACTION = 0x000fffff;

/** Natural logarithm, error below 1 in the last place, the same bits everywhere. Port of fdlibm’s e_log.c. */
export function log(x: number): number {
  if (x === 0) return Number.NEGATIVE_INFINITY;
  if (!(x > 0)) return Number.NaN;
  if (x === Number.POSITIVE_INFINITY) return x;
  let k = 0;
  let m = x;
  if (m < 2.2250738585072014e-308) {
    k = -54;
    m *= 1.8014398509481984e16;
  }
  let high = highOf(m);
  k += (high >> 20) - 1023;
  high &= FRACTION;
  const up = (high + 0x95f64) & 0x100000;
  m = withHigh(m, high | (up ^ 0x3ff00000));
  k += up >> 20;
  const f = m - 1;
  if ((FRACTION & (2 + high)) < 3) {
    if (f === 0) return k * LN2_HIGH + k * LN2_REST;
    const near = f * f * (0.5 - 0.3333333333333333 * f);
    return k === 0 ? f - near : k * LN2_HIGH - (near - k * LN2_REST - f);
  }
  const s = f / (2 + f);
  const z = s * s;
  const w = z * z;
  const odd = w * (0.3999999999940942 + w * (0.22222198432149784 + w * 0.15313837699209373));
  const even =
    z * (0.6666666666666735 + w * (0.2857142874366239 + w * (0.1818357216161805 + w * 0.14798198605116586)));
  const tail = even + odd;
  if (((high - 0x6147a) | (0x6b851 - high)) > 0) {
    const half = 0.5 * f * f;
    return k === 0
      ? f - (half - s * (half + tail))
      : k * LN2_HIGH - (half - (s * (half + tail) + k * LN2_REST) - f);
  }
  return k === 0 ? f - s * (f - tail) : k * LN2_HIGH - (s * (f - tail) - k * LN2_REST - f);
}

/** Logarithm to base 10. Port of fdlibm’s e_log10.c. */
export function log10(x: number): number {
  if (!(x > 0) || x === Number.POSITIVE_INFINITY) return log(x);
  let k = 0;
  let m = x;
  if (m < 2.2250738585072014e-308) {
    k = -54;
    m *= 1.8014398509481984e16;
  }
  const high = highOf(m);
  k += (high >> 20) - 1023;
  const below = k < 0 ? 1 : 0;
  m = withHigh(m, (high & FRACTION) | ((1023 - below) << 20));
  const whole = k + below;
  const rest = whole * 3.694239077158931e-13 + Math.LOG10E * log(m);
  return rest + whole * 0.30102999566361177;
}

/** Logarithm to base 2; that of a power of two is whole. */
export function log2(x: number): number {
  if (!(x > 0) || x === Number.POSITIVE_INFINITY) return log(x);
  const small = x < 2.2250738585072014e-308;
  const m = small ? x * 1.8014398509481984e16 : x;
  const high = highOf(m);
  // from √½ to √2, so that the whole part cancels nothing
  const up = (high & FRACTION) > 0x6a09e ? 1 : 0;
  const k = (high >> 20) - 1023 + up - (small ? 54 : 0);
  return k + log(withHigh(m, (high & FRACTION) | ((1023 - up) << 20))) * Math.LOG2E;
}
