import { LN2_HIGH, LN2_REST, powerOfTwo } from './words.ts';

/** e^x − 1, exact near 0, the same bits everywhere. Port of fdlibm’s s_expm1.c. */
export function expm1(given: number): number {
  if (given > 709.782712893384) return Number.POSITIVE_INFINITY;
  if (given < -38.816242111356935) return -1;
  let x = given;
  let lost = 0;
  let k = 0;
  const size = Math.abs(x);
  if (size > 0.5 * Math.LN2) {
    k = size < 1.0397207708399179 ? Math.sign(x) : Math.trunc(Math.LOG2E * x + (x < 0 ? -0.5 : 0.5));
    const high = x - k * LN2_HIGH;
    const rest = k * LN2_REST;
    x = high - rest;
    lost = high - x - rest;
  } else if (!(size >= 5.551115123125783e-17)) return x;
  const half = 0.5 * x;
  const z = x * half;
  const r =
    1 +
    z *
      (-0.03333333333333313 +
        z *
          (0.0015873015872548146 +
            z * (-7.93650757867488e-5 + z * (4.008217827329362e-6 + z * -2.0109921818362437e-7))));
  const t = 3 - r * half;
  let e = z * ((r - t) / (6 - x * t));
  if (k === 0) return x - (x * e - z);
  e = x * (e - lost) - lost - z;
  if (k === -1) return 0.5 * (x - e) - 0.5;
  if (k === 1) return x < -0.25 ? -2 * (e - (x + 0.5)) : 1 + 2 * (x - e);
  if (k <= -2 || k > 56) {
    const y = 1 - (e - x);
    return (k === 1024 ? y * 2 * powerOfTwo(1023) : y * powerOfTwo(k)) - 1;
  }
  const y = k < 20 ? 1 - powerOfTwo(-k) - (e - x) : x - (e + powerOfTwo(-k)) + 1;
  return y * powerOfTwo(k);
}

/** Hyperbolic tangent. Port of fdlibm’s s_tanh.c. */
export function tanh(x: number): number {
  const size = Math.abs(x);
  if (size < 2.7755575615628914e-17) return x;
  let value = 1;
  if (size < 22) {
    const t = expm1(size >= 1 ? 2 * size : -2 * size);
    value = size >= 1 ? 1 - 2 / (t + 2) : -t / (t + 2);
  }
  return Number.isNaN(x) ? x : x < 0 ? -value : value;
}
