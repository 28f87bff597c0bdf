import { LN2_HIGH, LN2_REST, powerOfTwo, scaled } from './words.ts';

/** 1/ln 2. */
const PER_LN2 = Math.LOG2E;

/** e to the power x, error below 1 in the last place, the same bits everywhere. Port of fdlibm’s e_exp.c. */
export function exp(x: number): number {
  if (!(x <= 709.782712893384)) return x > 0 ? Number.POSITIVE_INFINITY : Number.NaN;
  if (x < -745.1332191019411) return 0;
  const size = Math.abs(x);
  if (size < 3.725290298461914e-9) return 1 + x;
  let k = 0;
  let high = x;
  let rest = 0;
  if (size > 0.5 * Math.LN2) {
    if (x === 1) return Math.E;
    k = Math.trunc(PER_LN2 * x + (x < 0 ? -0.5 : 0.5));
    high = x - k * LN2_HIGH;
    rest = k * LN2_REST;
  }
  const r = high - rest;
  const t = r * r;
  const c =
    r -
    t *
      (0.16666666666666602 +
        t *
          (-0.0027777777777015593 +
            t * (6.613756321437934e-5 + t * (-1.6533902205465252e-6 + t * 4.1381367970572385e-8))));
  if (k === 0) return 1 - ((r * c) / (c - 2) - r);
  const y = 1 - (rest - (r * c) / (2 - c) - high);
  return k >= -1021 && k < 1024 ? y * powerOfTwo(k) : scaled(y, k);
}
