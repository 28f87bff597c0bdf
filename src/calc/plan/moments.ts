/**
 * Mean and spread of numbers added one by one, with the sums of deviations from the first value kept in two doubles each
 * (T. J. Dekker, Numer. Math. 18 (1971) 224–242; D. E. Knuth, TAOCP 2, 4.2.2): the textbook one-pass sum of squares
 * loses all digits when the mean is large beside the spread. The same steps as the cell engine, so the same last digit.
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
  let sum = 0;
  let sumLow = 0;
  let squares = 0;
  let squaresLow = 0;
  for (let i = 1; i < n; i++) {
    // the exact difference d + e of the value and the shift
    const x = values[i]!;
    const d = x - shift;
    const e = Math.abs(x) >= Math.abs(shift) ? -shift - (d - x) : x - (d + shift);
    const size = Math.abs(d);
    if (size > LARGEST || (size < SMALLEST && size !== 0)) return null;
    // sum += d + e
    let high = sum + d;
    let low = (Math.abs(sum) >= Math.abs(d) ? d - (high - sum) : sum - (high - d)) + sumLow + e;
    sum = high + low;
    sumLow = low - (sum - high);
    // squares += (d + e)²
    const p = d * d;
    const split = SPLITTER * d;
    const dHigh = split - (split - d);
    const dLow = d - dHigh;
    const pLow = dHigh * dHigh - p + dHigh * dLow + dLow * dHigh + dLow * dLow + (d * e + e * d);
    high = squares + p;
    low =
      (Math.abs(squares) >= Math.abs(p) ? p - (high - squares) : squares - (high - p)) + squaresLow + pLow;
    squares = high + low;
    squaresLow = low - (squares - high);
  }
  return { count: n, variance: (divisor) => variance(n, divisor, [sum, sumLow], [squares, squaresLow]) };
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
