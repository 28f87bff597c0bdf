import { quarterTurns, rest } from './quarter-turns.ts';
import { shortened } from './words.ts';

// Circular functions, the same bits everywhere, error below 1 in the last place. Ports of fdlibm’s k_sin.c, k_cos.c, k_tan.c.

/** Sine of x + tail, up to π/4. */
function sineNear(x: number, tail: number): number {
  const z = x * x;
  const v = z * x;
  const r =
    0.00833333333332249 +
    z *
      (-0.0001984126982985795 +
        z * (2.7557313707070068e-6 + z * (-2.5050760253406863e-8 + z * 1.58969099521155e-10)));
  return x - (z * (0.5 * tail - v * r) - tail - v * -0.16666666666666632);
}

/** Cosine of x + tail, up to π/4. */
function cosineNear(x: number, tail: number): number {
  const z = x * x;
  const r =
    z *
    (0.0416666666666666 +
      z *
        (-0.001388888888887411 +
          z *
            (2.480158728947673e-5 +
              z * (-2.7557314351390663e-7 + z * (2.087572321298175e-9 + z * -1.1359647557788195e-11)))));
  const half = 0.5 * z;
  const w = 1 - half;
  return w + (1 - w - half + (z * r - x * tail));
}

const QUARTER_PI = Math.PI / 4;
const QUARTER_PI_REST = 3.061616997868383e-17;
/** From here on tan is taken from that of what is missing to π/4. */
const NEAR_DIAGONAL = 0.67434;

/** Tangent of x + tail, up to π/4; its negative reciprocal after an odd number of quarter turns. */
function tangentNear(given: number, givenTail: number, odd: boolean): number {
  let x = given;
  let tail = givenTail;
  const steep = Math.abs(x) >= NEAR_DIAGONAL;
  if (steep) {
    if (x < 0) {
      x = -x;
      tail = -tail;
    }
    x = QUARTER_PI - x + (QUARTER_PI_REST - tail);
    tail = 0;
  }
  const z = x * x;
  const w = z * z;
  const even =
    0.13333333333320124 +
    w *
      (0.021869488294859542 +
        w *
          (0.0035920791075913124 +
            w * (0.0005880412408202641 + w * (7.817944429395571e-5 + w * -1.8558637485527546e-5))));
  const uneven =
    z *
    (0.05396825397622605 +
      w *
        (0.0088632398235993 +
          w *
            (0.0014562094543252903 +
              w * (0.0002464631348184699 + w * (7.140724913826082e-5 + w * 2.590730518636337e-5)))));
  const cube = z * x;
  const r = tail + z * (cube * (even + uneven) + tail) + 0.3333333333333341 * cube;
  const sum = x + r;
  if (steep) {
    const v = odd ? -1 : 1;
    return (given < 0 ? -1 : 1) * (v - 2 * (x - ((sum * sum) / (sum + v) - r)));
  }
  if (!odd) return sum;
  // −1/(x + r), in two parts
  const short = shortened(sum);
  const lost = r - (short - x);
  const a = -1 / sum;
  const t = shortened(a);
  return t + a * (1 + t * short + t * lost);
}

/** Sine of an angle in radians. */
export function sin(x: number): number {
  if (Math.abs(x) <= QUARTER_PI) return Math.abs(x) < 7.450580596923828e-9 ? x : sineNear(x, 0);
  const turns = quarterTurns(x);
  const value = turns % 2 === 0 ? sineNear(rest[0]!, rest[1]!) : cosineNear(rest[0]!, rest[1]!);
  return turns > 1 ? -value : value;
}

/** Cosine of an angle in radians. */
export function cos(x: number): number {
  if (Math.abs(x) <= QUARTER_PI) return Math.abs(x) < 7.450580596923828e-9 ? 1 : cosineNear(x, 0);
  const turns = quarterTurns(x);
  const value = turns % 2 === 0 ? cosineNear(rest[0]!, rest[1]!) : sineNear(rest[0]!, rest[1]!);
  return turns === 1 || turns === 2 ? -value : value;
}

/** Tangent of an angle in radians. */
export function tan(x: number): number {
  if (Math.abs(x) <= QUARTER_PI) return Math.abs(x) < 3.725290298461914e-9 ? x : tangentNear(x, 0, false);
  const turns = quarterTurns(x);
  return tangentNear(rest[0]!, rest[1]!, turns % 2 === 1);
}
