import { shortened } from './words.ts';

// Inverse circular functions, in radians, the same bits everywhere. Ports of fdlibm’s e_asin.c, e_acos.c, s_atan.c, e_atan2.c.

const HALF_PI_REST = 6.123233995736766e-17;
const QUARTER_PI = Math.PI / 4;
const HALF_PI = Math.PI / 2;

/** (asin x − x)/x of t = x², up to x = ½. */
function excess(t: number): number {
  const p =
    t *
    (0.16666666666666666 +
      t *
        (-0.3255658186224009 +
          t *
            (0.20121253213486293 +
              t * (-0.04005553450067941 + t * (0.0007915349942898145 + t * 3.479331075960212e-5)))));
  const q =
    1 +
    t * (-2.403394911734414 + t * (2.0209457602335057 + t * (-0.6882839716054533 + t * 0.07703815055590194)));
  return p / q;
}

/** Arc sine, −π/2 to π/2; NaN outside −1 to 1. */
export function asin(x: number): number {
  const size = Math.abs(x);
  if (size < 0.5) return size < 7.450580596923828e-9 ? x : x + x * excess(x * x);
  if (!(size < 1)) return size === 1 ? x * HALF_PI + x * HALF_PI_REST : Number.NaN;
  const t = (1 - size) * 0.5;
  const r = excess(t);
  const s = Math.sqrt(t);
  let angle: number;
  if (size >= 0.975) {
    angle = HALF_PI - (2 * (s + s * r) - HALF_PI_REST);
  } else {
    const short = shortened(s);
    const c = (t - short * short) / (s + short);
    angle = QUARTER_PI - (2 * s * r - (HALF_PI_REST - 2 * c) - (QUARTER_PI - 2 * short));
  }
  return x < 0 ? -angle : angle;
}

/** Arc cosine, 0 to π; NaN outside −1 to 1. */
export function acos(x: number): number {
  const size = Math.abs(x);
  if (size < 0.5) {
    return size < 6.938893903907228e-18
      ? HALF_PI + HALF_PI_REST
      : HALF_PI - (x - (HALF_PI_REST - x * excess(x * x)));
  }
  if (!(size < 1)) return x === 1 ? 0 : x === -1 ? Math.PI + 2 * HALF_PI_REST : Number.NaN;
  const z = (1 - size) * 0.5;
  const s = Math.sqrt(z);
  const r = excess(z);
  if (x < 0) return Math.PI - 2 * (s + (r * s - HALF_PI_REST));
  const short = shortened(s);
  return 2 * (short + (r * s + (z - short * short) / (s + short)));
}

/** x − atan x over x, of z = x², up to x = 7/16. */
function shortfall(z: number): number {
  const w = z * z;
  const odd =
    z *
    (0.3333333333333293 +
      w *
        (0.14285714272503466 +
          w *
            (0.09090887133436507 +
              w * (0.06661073137387531 + w * (0.049768779946159324 + w * 0.016285820115365782)))));
  const even =
    w *
    (-0.19999999999876483 +
      w *
        (-0.11111110405462356 +
          w * (-0.0769187620504483 + w * (-0.058335701337905735 + w * -0.036531572744216916))));
  return odd + even;
}

/** Arc tangent of a size, 0 to π/2. */
function atanOf(size: number): number {
  if (!(size < 7.378697629483821e19)) return Number.isNaN(size) ? size : HALF_PI + HALF_PI_REST;
  if (size < 0.4375) return size < 7.450580596923828e-9 ? size : size - size * shortfall(size * size);
  let x: number;
  let high: number;
  let rest: number;
  if (size < 0.6875) {
    x = (2 * size - 1) / (2 + size);
    high = 0.4636476090008061;
    rest = 2.2698777452961687e-17;
  } else if (size < 1.1875) {
    x = (size - 1) / (size + 1);
    high = QUARTER_PI;
    rest = 3.061616997868383e-17;
  } else if (size < 2.4375) {
    x = (size - 1.5) / (1 + 1.5 * size);
    high = 0.982793723247329;
    rest = 1.3903311031230998e-17;
  } else {
    x = -1 / size;
    high = HALF_PI;
    rest = HALF_PI_REST;
  }
  return high - (x * shortfall(x * x) - rest - x);
}

/** Arc tangent, −π/2 to π/2. */
export const atan = (x: number): number => (x < 0 || Object.is(x, -0) ? -atanOf(-x) : atanOf(x));

/** Angle of the point (x, y), above −π to π; signs of zeros count. */
export function atan2(y: number, x: number): number {
  if (Number.isNaN(x) || Number.isNaN(y)) return Number.NaN;
  const behind = x < 0 || Object.is(x, -0);
  const below = y < 0 || Object.is(y, -0);
  let angle: number;
  if (y === 0) angle = 0;
  else if (x === 0) angle = HALF_PI;
  else if (Math.abs(x) === Number.POSITIVE_INFINITY && Math.abs(y) === Number.POSITIVE_INFINITY)
    angle = QUARTER_PI;
  // so steep or so flat that the quotient would say nothing more
  else if (Math.abs(y / x) > 1.152921504606847e18) return below ? -HALF_PI : HALF_PI;
  else angle = behind && Math.abs(y / x) < 8.673617379884035e-19 ? 0 : atanOf(Math.abs(y / x));
  if (behind) angle = Math.PI - (angle - 2 * HALF_PI_REST);
  return below ? -angle : angle;
}
