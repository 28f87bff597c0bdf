/**
 * Rounding by decimal digits. A number counts with the 15 significant digits that a double always has (IEEE 754, binary64),
 * so that 1.005, which is a little less as a double, is a half, and noise of arithmetic (28.499999999999996 for .285 · 100)
 * decides nothing. Halves go away from zero, as in OpenFormula 1.3, part 4, 6.17 (rounding functions), and as TEXT does. Where more
 * than 15 digits are asked for, those of the shortest decimal form decide.
 */
export type Way = 'half' | 'up' | 'down';

/** Significant digits that every decimal number keeps on its way through a double. */
const DIGITS = 15;
/** Powers of ten that are exact as doubles. */
const powers = Array.from({ length: 23 }, (_, n) => Number(`1e${n}`));
/** Up to here scaled numbers are exact enough to see at once that they are far from a half or a whole number. */
const CLEAR = 2 ** 46;

/** x rounded to so many decimals (negative: tens, hundreds, …): to the nearest, away from zero or towards it. */
export function rounded(x: number, decimals: number, way: Way): number {
  const places = Math.trunc(decimals);
  if (x === 0 || !Number.isFinite(x) || (places >= 0 && Number.isInteger(x))) return x;
  const size = Math.abs(x);
  const result = atOnce(size, places, way) ?? byDigits(size, places, way);
  return (x < 0 ? -result : result) + 0;
}

/** Where it is clear which way to go; both factors are exact, so the result is the nearest double. */
function atOnce(size: number, places: number, way: Way): number | undefined {
  const power = powers[Math.abs(places)];
  if (power === undefined) return undefined;
  const scaled = places < 0 ? size / power : size * power;
  if (scaled > CLEAR) return undefined;
  const whole = Math.floor(scaled);
  const rest = scaled - whole;
  const unsure = (scaled + 1) * 1e-14;
  if (way === 'half' ? Math.abs(rest - 0.5) < unsure : rest < unsure || rest > 1 - unsure) return undefined;
  const steps = way === 'up' || (way === 'half' && rest > 0.5) ? whole + 1 : whole;
  return places < 0 ? steps * power : steps / power;
}

function byDigits(size: number, places: number, way: Way): number {
  let { digits, exponent } = digitsOf(size.toExponential(DIGITS - 1));
  if (exponent + 1 + places >= DIGITS) ({ digits, exponent } = digitsOf(size.toExponential()));
  const keep = exponent + 1 + places;
  if (keep >= digits.length) return Number(`${digits}e${exponent + 1 - digits.length}`);
  const kept = keep > 0 ? BigInt(digits.slice(0, keep)) : 0n;
  const rest = keep < 0 ? `0${digits}` : digits.slice(keep);
  const next = way === 'half' ? rest >= '5' : way === 'up' && /[1-9]/.test(rest);
  return Number(`${next ? kept + 1n : kept}e${-places}`);
}

function digitsOf(scientific: string): { digits: string; exponent: number } {
  const [digits, exponent] = scientific.split('e') as [string, string];
  return { digits: digits.replace('.', ''), exponent: Number(exponent) };
}

/** The multiple of a step next to a number of either sign, without a tail of digits (7.3, not 7.300000000000001); infinite where none is near. */
export function multiple(x: number, step: number, way: Way): number {
  const quotient = Math.abs(x / step);
  if (!Number.isFinite(quotient)) return Number.POSITIVE_INFINITY;
  const { digits, exponent } = digitsOf(Math.abs(step).toExponential());
  const times = BigInt(rounded(quotient, 0, way));
  const size = Number(`${times * BigInt(digits)}e${exponent + 1 - digits.length}`);
  return (x < 0 ? -size : size) + 0;
}
