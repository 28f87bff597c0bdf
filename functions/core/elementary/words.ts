/**
 * The two 32-bit halves of a double, which the elementary functions here are built on. They are ports of fdlibm:
 *
 *   Copyright (C) 1993–2004 by Sun Microsystems, Inc. All rights reserved.
 *   Developed at SunSoft, a Sun Microsystems, Inc. business. Permission to use, copy, modify, and distribute this software
 *   is freely granted, provided that this notice is preserved.
 *
 * The language leaves the last digits of Math.exp, Math.log and the like to each engine. Sums, products, quotients and
 * square roots are exact to the bit everywhere (IEEE 754), so functions made of these alone are too.
 */
const double = new Float64Array(1);
const halves = new Int32Array(double.buffer);
const HIGH = new Uint8Array(new Int32Array([1]).buffer)[0] === 1 ? 1 : 0;
const LOW = 1 - HIGH;

/** Sign, exponent and the first 20 bits of the significand, as a signed 32-bit number. */
export function highOf(x: number): number {
  double[0] = x;
  return halves[HIGH]!;
}

export function withHigh(x: number, high: number): number {
  double[0] = x;
  halves[HIGH] = high;
  return double[0];
}

/** The number with the lower half of its bits zero, so that its square is exact. */
export function shortened(x: number): number {
  double[0] = x;
  halves[LOW] = 0;
  return double[0];
}

/** 2 to a whole power from −1022 to 1023. */
export function powerOfTwo(k: number): number {
  halves[HIGH] = (1023 + k) << 20;
  halves[LOW] = 0;
  return double[0]!;
}

/** x · 2^k, whatever k; subnormal results are rounded once. */
export function scaled(x: number, k: number): number {
  if (k > 1023) return k > 2046 ? x * TOP * TOP : x * powerOfTwo(k - 1023) * TOP;
  if (k < -1022) return k < -2000 ? x * BOTTOM * BOTTOM : x * powerOfTwo(k + 1000) * SMALL;
  return x * powerOfTwo(k);
}

const TOP = 8.98846567431158e307;
const BOTTOM = 2.2250738585072014e-308;
const SMALL = 9.332636185032189e-302;

/** ln 2 in two parts, the first short enough for exact multiples. */
export const LN2_HIGH = 0.6931471803691238;
export const LN2_REST = 1.9082149292705877e-10;
