import { scaled } from './words.ts';

// An angle less whole quarter turns. Port of fdlibm’s e_rem_pio2.c; beyond a million quarter turns by whole-number arithmetic.

/** What is left of the last angle, from −π/4 to π/4, in two parts. */
export const rest = new Float64Array(2);

/** Takes the quarter turns out of an angle in radians and leaves the `rest`. Answers how many, modulo 4. */
export function quarterTurns(x: number): number {
  const size = Math.abs(x);
  const turns = size > 1647099 ? far(size) : near(size);
  if (x >= 0) return turns;
  rest[0] = -rest[0]!;
  rest[1] = -rest[1]!;
  return -turns & 3;
}

/** π/2 in parts of 33 bits, whose multiples are exact, each with what comes after it. */
const PARTS = [
  [1.5707963267341256, 6.077100506506192e-11],
  [6.077100506303966e-11, 2.0222662487959506e-21],
  [2.0222662487111665e-21, 8.4784276603689e-32],
] as const;

function near(size: number): number {
  const n = Math.floor(size * 0.6366197723675814 + 0.5);
  let r = size - n * PARTS[0][0];
  let w = n * PARTS[0][1];
  // close to a whole number of quarter turns little is left, and more digits of π count
  for (let k = 1; k < 3 && Math.abs(r - w) < size * (k === 1 ? 1.6e-5 : 1.8e-15); k++) {
    const before = r;
    const next = n * PARTS[k]![0];
    r = before - next;
    w = n * PARTS[k]![1] - (before - r - next);
  }
  rest[0] = r - w;
  rest[1] = r - rest[0] - w;
  return n & 3;
}

/** Binary digits of π behind the point: the largest number has 1024 before it, some 60 may cancel, and two numbers hold 106. */
const DIGITS = 1250n;
/** π/2 · 2^DIGITS, computed when first asked for. */
let halfPi = 0n;

/** atan(1/n) · 2^DIGITS. */
function arcOfPart(n: bigint): bigint {
  let power = (1n << (DIGITS + 16n)) / n;
  let sum = 0n;
  for (let k = 1n; power > 0n; k += 2n) {
    sum += k % 4n === 1n ? power / k : -(power / k);
    power /= n * n;
  }
  return sum >> 16n;
}

function far(size: number): number {
  if (!(size < Number.POSITIVE_INFINITY)) {
    rest.fill(Number.NaN);
    return 0;
  }
  // Machin’s formula
  if (halfPi === 0n) halfPi = 2n * (4n * arcOfPart(5n) - arcOfPart(239n));
  const angle =
    size < 4503599627370496 ? BigInt(size * 4294967296) << (DIGITS - 32n) : BigInt(size) << DIGITS;
  let n = angle / halfPi;
  let left = angle - n * halfPi;
  if (2n * left > halfPi) {
    n += 1n;
    left -= halfPi;
  }
  const drop = BigInt(Math.max(0, left.toString(2).length - 120));
  const first = Number(left >> drop);
  rest[0] = scaled(first, Number(drop - DIGITS));
  rest[1] = scaled(Number((left >> drop) - BigInt(first)), Number(drop - DIGITS));
  return Number(n & 3n);
}
