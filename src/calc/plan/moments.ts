/**
 * Mean and spread of numbers added one by one, with the sums of deviations from the first value kept in two doubles each
 * (T. J. Dekker, Numer. Math. 18 (1971) 224–242; D. E. Knuth, TAOCP 2, 4.2.2): the textbook one-pass sum of squares
 * loses all digits when the mean is large beside the spread. As exact as the cell engine's, so the same last digit.
 */
export interface Moments {
  readonly count: number;
  /** Sum of squared deviations from the mean, divided. */
  variance(divisor: number): number;
}

const SPLITTER = 134217729;
/** Deviations beyond these would overflow or underflow when squared. */
const LARGEST = 2 ** 450;
const SMALLEST = 2 ** -450;

/** The moments of n values, or null when they lie so far apart (or so close together) that plain doubles do not hold them. */
export function momentsOf(values: ArrayLike<number>, n: number): Moments | null {
  if (n === 0) return { count: 0, variance: () => 0 };
  const shift = values[0]!;
  // two sums side by side: neither waits for the other, and the processor takes half the time
  let even = 0;
  let evenLow = 0;
  let evenSquares = 0;
  let evenSquaresLow = 0;
  let odd = 0;
  let oddLow = 0;
  let oddSquares = 0;
  let oddSquaresLow = 0;
  let outside = 0;
  for (let i = 1; i < n; i += 2) {
    const x = values[i]!;
    const y = i + 1 < n ? values[i + 1]! : shift;
    // the exact differences d + e of the values and the shift
    const d = x - shift;
    const f = y - shift;
    const dBack = d - x;
    const fBack = f - y;
    const e = x - (d - dBack) + (-shift - dBack);
    const g = y - (f - fBack) + (-shift - fBack);
    const dSize = Math.abs(d);
    const fSize = Math.abs(f);
    if (dSize > LARGEST || (dSize < SMALLEST && d !== 0)) outside = 1;
    if (fSize > LARGEST || (fSize < SMALLEST && f !== 0)) outside = 1;
    // their exact squares, but for what is far below the last digit
    const p = d * d;
    const q = f * f;
    const dSplit = SPLITTER * d;
    const fSplit = SPLITTER * f;
    const dHigh = dSplit - (dSplit - d);
    const fHigh = fSplit - (fSplit - f);
    const dLow = d - dHigh;
    const fLow = f - fHigh;
    const pLow = dHigh * dHigh - p + 2 * dHigh * dLow + dLow * dLow + 2 * d * e;
    const qLow = fHigh * fHigh - q + 2 * fHigh * fLow + fLow * fLow + 2 * f * g;
    // each sum of two doubles is exact in high + low
    let high = even + d;
    let back = high - even;
    let low = even - (high - back) + (d - back) + evenLow + e;
    even = high + low;
    evenLow = low - (even - high);
    high = odd + f;
    back = high - odd;
    low = odd - (high - back) + (f - back) + oddLow + g;
    odd = high + low;
    oddLow = low - (odd - high);
    high = evenSquares + p;
    back = high - evenSquares;
    low = evenSquares - (high - back) + (p - back) + evenSquaresLow + pLow;
    evenSquares = high + low;
    evenSquaresLow = low - (evenSquares - high);
    high = oddSquares + q;
    back = high - oddSquares;
    low = oddSquares - (high - back) + (q - back) + oddSquaresLow + qLow;
    oddSquares = high + low;
    oddSquaresLow = low - (oddSquares - high);
  }
  if (outside === 1) return null;
  const sum = total([even, evenLow], [odd, oddLow]);
  const squares = total([evenSquares, evenSquaresLow], [oddSquares, oddSquaresLow]);
  return { count: n, variance: (divisor) => variance(n, divisor, sum, squares) };
}

type Pair = readonly [high: number, low: number];

function product(a: number, b: number): Pair {
  const high = a * b;
  const aSplit = SPLITTER * a;
  const aHigh = aSplit - (aSplit - a);
  const aLow = a - aHigh;
  const bSplit = SPLITTER * b;
  const bHigh = bSplit - (bSplit - b);
  const bLow = b - bHigh;
  return [high, aHigh * bHigh - high + aHigh * bLow + aLow * bHigh + aLow * bLow];
}

function exactSum(a: number, b: number): Pair {
  const high = a + b;
  return [high, Math.abs(a) >= Math.abs(b) ? b - (high - a) : a - (high - b)];
}

const total = (x: Pair, y: Pair): Pair => difference(x, [-y[0], -y[1]]);

function quotient(x: Pair, k: number): Pair {
  const q = x[0] / k;
  const p = product(q, k);
  return exactSum(q, (x[0] - p[0] - p[1] + x[1]) / k);
}

function difference(x: Pair, y: Pair): Pair {
  const s = exactSum(x[0], -y[0]);
  const low = s[1] + x[1] - y[1];
  const high = s[0] + low;
  return [high, low - (high - s[0])];
}

function variance(n: number, divisor: number, sum: Pair, squares: Pair): number {
  const mean = quotient(sum, n);
  const p = product(sum[0], mean[0]);
  const correction: Pair = [p[0], p[1] + (sum[0] * mean[1] + sum[1] * mean[0])];
  const result = quotient(difference(squares, correction), divisor);
  return result[0] + result[1];
}
