import * as arc from '../core/elementary/arc.ts';

/** Radians in a degree. */
export const RAD = Math.PI / 180;

/**
 * Sine and cosine of degrees, by their series. The language leaves the last bit of its own to each engine, and they differ
 * there: these give the same digits in every browser and on the command line, and are exact at whole quarter turns.
 */
export function sin(degrees: number): number {
  const quarters = Math.round(degrees / 90);
  const rest = (degrees - 90 * quarters) * RAD;
  switch (quarters & 3) {
    case 0:
      return sine(rest);
    case 1:
      return cosine(rest);
    case 2:
      return -sine(rest);
    default:
      return -cosine(rest);
  }
}

export function cos(degrees: number): number {
  const quarters = Math.round(degrees / 90);
  const rest = (degrees - 90 * quarters) * RAD;
  switch (quarters & 3) {
    case 0:
      return cosine(rest);
    case 1:
      return -sine(rest);
    case 2:
      return -cosine(rest);
    default:
      return sine(rest);
  }
}

/** Terms of the series, 1/n!: what is left out is below 1e-19 up to an eighth of a turn. */
const [S3, S5, S7, S9] = [-1 / 6, 1 / 120, -1 / 5040, 1 / 362880];
const [S11, S13, S15, S17] = [-1 / 39916800, 1 / 6227020800, -1 / 1307674368000, 1 / 355687428096000];
const [C4, C6, C8, C10] = [1 / 24, -1 / 720, 1 / 40320, -1 / 3628800];
const [C12, C14, C16, C18] = [1 / 479001600, -1 / 87178291200, 1 / 20922789888000, -1 / 6402373705728000];

function sine(x: number): number {
  const z = x * x;
  return x + x * z * (S3 + z * (S5 + z * (S7 + z * (S9 + z * (S11 + z * (S13 + z * (S15 + z * S17)))))));
}

function cosine(x: number): number {
  const z = x * x;
  const half = 0.5 * z;
  const high = 1 - half;
  // What 1 − z/2 lost to rounding is given back with the small terms.
  const lost = 1 - high - half;
  const small = z * z * (C4 + z * (C6 + z * (C8 + z * (C10 + z * (C12 + z * (C14 + z * (C16 + z * C18)))))));
  return high + (lost + small);
}

/** Arc sine in degrees; NaN outside −1 to 1. */
export const asin = (ratio: number): number => arc.asin(ratio) / RAD;
