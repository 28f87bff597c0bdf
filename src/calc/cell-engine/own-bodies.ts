/**
 * Bodies of statistical and rounding functions that stand in for the cell engine's own, by the method that it keeps them under. Its
 * parameters, coercion and errors remain; the values come from functions/statistics, which keeps the digits of small tails.
 * Definitions: OpenFormula 1.3, part 4, 6.18 (statistical functions).
 */

import { CellError, ErrorType, type SimpleRangeValue } from 'hyperformula';
import { exp } from '../../../functions/core/elementary/exp.ts';
import { log } from '../../../functions/core/elementary/log.ts';
import { square } from '../../../functions/core/elementary/pow.ts';
import {
  chiSquaredDensity,
  chiSquaredQuantile,
  chiSquaredTails,
  fDensity,
  fQuantile,
  fQuantileAbove,
  fTails,
  normalBelow,
  normalBetween,
  normalDensity,
  normalQuantile,
  tBelow,
  tDensity,
  tQuantile,
  tQuantileTwoSided,
  tTwoSided,
} from '../../../functions/statistics/distributions.ts';
import { countBodies, refusals } from './count-bodies.ts';
import { distinctBody, type Reading } from './distinct.ts';
import { formatted } from './number-format.ts';
import { elementaryBodies, usesMath, withOwnMath } from './own-math.ts';
import { multiple, rounded, type Way } from './rounding.ts';
import { type Inner, isRich } from './values.ts';

type Answer = number | string | CellError;
type Body = (...args: never[]) => Answer;

const whole = Math.trunc;
const finite = (value: number): Answer =>
  Number.isFinite(value) ? value : new CellError(ErrorType.NUM, 'NaN or infinite value encountered.');

/** A density; that of F and chi-squared has no end at 0 with one degree of freedom. */
const density = (value: number): Answer =>
  value === Infinity ? new CellError(ErrorType.NUM, 'The density is infinite.') : value;

/** Quantiles at the ends of the scale: 0 where x begins, none where it has no end. */
const fromZero = (p: number, atZero: number, inside: (p: number) => number): Answer =>
  p === atZero ? 0 : finite(p === 1 - atZero ? Infinity : inside(p));

const plain = (value: Inner): number | undefined =>
  typeof value === 'number' ? value : isRich(value) ? value.val : undefined;

const errorIn = (range: SimpleRangeValue): CellError | undefined =>
  range.valuesFromTopLeftCorner().find((value) => value instanceof CellError);

const numbersIn = (range: SimpleRangeValue): number[] =>
  range
    .valuesFromTopLeftCorner()
    .map(plain)
    .filter((value) => value !== undefined);

const meanOf = (x: readonly number[]): number => x.reduce((sum, v) => sum + v, 0) / x.length;

/** Sum of squares about the mean, centred first; what rounding left in the mean is taken out again. */
function squaresOf(x: readonly number[]): number {
  const mean = meanOf(x);
  let sum = 0;
  let rest = 0;
  for (const v of x) {
    sum += square(v - mean);
    rest += v - mean;
  }
  return sum - square(rest) / x.length;
}
const varianceOf = (x: readonly number[]): number => squaresOf(x) / (x.length - 1);

const unequal = () => new CellError(ErrorType.NA, 'Ranges need to be of equal length.');
const divided = (message = '') => new CellError(ErrorType.DIV_BY_ZERO, message);
const tooFew = () => divided('Range needs to contain at least two elements.');

/** Differences of the pairs; a pair with a blank or text on either side is left out. */
function differences(x: SimpleRangeValue, y: SimpleRangeValue): number[] {
  const others = y.valuesFromTopLeftCorner();
  return x.valuesFromTopLeftCorner().flatMap((value, i) => {
    const [a, b] = [plain(value), plain(others[i]!)];
    return a === undefined || b === undefined ? [] : [a - b];
  });
}

function pairedT(x: SimpleRangeValue, y: SimpleRangeValue, tails: number): Answer {
  if (x.numberOfElements() !== y.numberOfElements()) return unequal();
  const d = differences(x, y);
  if (d.length < 2) return tooFew();
  const se = Math.sqrt(varianceOf(d) / d.length);
  return se > 0 ? (tails * tTwoSided(meanOf(d) / se, d.length - 1)) / 2 : divided();
}

function unpairedT(x: readonly number[], y: readonly number[], tails: number, equal: boolean): Answer {
  const [n, m] = [x.length, y.length];
  if (n < 2 || m < 2) return tooFew();
  const [a, b] = equal
    ? [1 / n, 1 / m].map((share) => (share * (squaresOf(x) + squaresOf(y))) / (n + m - 2))
    : [varianceOf(x) / n, varianceOf(y) / m];
  const both = a! + b!;
  if (both === 0) return divided();
  // Satterthwaite's degrees of freedom where the variances differ
  const df = equal ? n + m - 2 : square(both) / (square(a!) / (n - 1) + square(b!) / (m - 1));
  return (tails * tTwoSided((meanOf(x) - meanOf(y)) / Math.sqrt(both), df)) / 2;
}

function tTest(x: SimpleRangeValue, y: SimpleRangeValue, tails: number, type: number): Answer {
  const error = errorIn(x) ?? errorIn(y);
  if (error) return error;
  return type === 1 ? pairedT(x, y, tails) : unpairedT(numbersIn(x), numbersIn(y), tails, type === 2);
}

/** Not paired: each side's blanks are left out by themselves. */
function fTest(x: SimpleRangeValue, y: SimpleRangeValue): Answer {
  const error = errorIn(x) ?? errorIn(y);
  if (error) return error;
  const [a, b] = [numbersIn(x), numbersIn(y)];
  if (a.length < 2 || b.length < 2) return divided();
  const [va, vb] = [varianceOf(a), varianceOf(b)];
  if (va === 0 || vb === 0) return divided();
  const { below, above } = fTails(va / vb, a.length - 1, b.length - 1);
  return 2 * Math.min(below, above);
}

/** One-sided: the probability of a mean so large or larger. The SD is that of the sample where none is given. */
function zTest(sample: SimpleRangeValue, value: number, given: number | undefined): Answer {
  const error = errorIn(sample);
  if (error) return error;
  const x = numbersIn(sample);
  if (given === undefined && x.length < 2) return tooFew();
  if (x.length < 1) return new CellError(ErrorType.NA, 'At least one value is needed.');
  const sd = given ?? Math.sqrt(varianceOf(x));
  return sd === 0 ? divided() : normalBelow((value - meanOf(x)) / (sd / Math.sqrt(x.length)));
}

/** Counts against those expected; a pair with a blank or text on either side is left out. */
function chiSquaredTest(counts: SimpleRangeValue, expected: SimpleRangeValue): Answer {
  const [rows, columns] = [counts.height(), counts.width()];
  if (expected.height() !== rows || expected.width() !== columns) return unequal();
  const error = errorIn(counts) ?? errorIn(expected);
  if (error) return error;
  const others = expected.valuesFromTopLeftCorner();
  let sum = 0;
  let pairs = 0;
  for (const [i, value] of counts.valuesFromTopLeftCorner().entries()) {
    const [count, wanted] = [plain(value), plain(others[i]!)];
    if (count === undefined || wanted === undefined) continue;
    if (wanted === 0) return divided();
    sum += square(count - wanted) / wanted;
    pairs++;
  }
  if (pairs < 2) return tooFew();
  if (sum < 0) return new CellError(ErrorType.NUM, 'NaN or infinite value encountered.');
  return chiSquaredTails(sum, rows > 1 && columns > 1 ? (rows - 1) * (columns - 1) : rows * columns - 1)
    .above;
}

const rounding =
  (way: Way): Body =>
  (x: number, decimals: number) =>
    rounded(x, decimals, way);

/** OpenFormula 1.3, part 4, 6.17 (rounding functions), MROUND. */
function toMultiple(x: number, step: number): Answer {
  if (step === 0 || x === 0) return 0;
  if (x > 0 !== step > 0) return new CellError(ErrorType.NUM, 'Signs of the arguments differ.');
  return finite(multiple(x, step, 'half'));
}

/** A multiple at or beyond a number: above or below it where the step is positive, away from zero or towards it otherwise. */
const next = (x: number, step: number, above: boolean): Answer =>
  x === 0 ? 0 : finite(multiple(x, step, (x > 0 === step > 0) === above ? 'up' : 'down'));

/** CEILING and FLOOR: the sign of the step counts. */
const signed =
  (above: boolean): Body =>
  (x: number, step: number) => {
    if (x === 0) return 0;
    if (step === 0) return divided();
    return x > 0 && step < 0
      ? new CellError(ErrorType.NUM, 'Signs of the arguments differ.')
      : next(x, step, above);
  };

/** CEILING.MATH, FLOOR.MATH and those called PRECISE: up or down whatever the sign of the step; below zero mode 1 turns that round. */
const sized =
  (above: boolean): Body =>
  (x: number, step: number, mode?: number) =>
    step === 0 ? 0 : next(x, mode === 1 && x < 0 ? -Math.abs(step) : Math.abs(step), above);

const tAbove = (x: number, df: number): number => tBelow(-x, whole(df));

export const ownBodies: ReadonlyMap<string, Body> = new Map<string, Body>([
  ['tdist', (x: number, df: number, cumulative: boolean) => (cumulative ? tBelow : tDensity)(x, whole(df))],
  ['tdist2t', (x: number, df: number) => tTwoSided(x, whole(df))],
  ['tdistrt', tAbove],
  ['tdistold', (x: number, df: number, tails: number) => tails * tAbove(x, df)],
  ['tinv', (p: number, df: number) => tQuantile(p, whole(df))],
  ['tinv2t', (p: number, df: number) => tQuantileTwoSided(p, whole(df))],
  [
    'fdist',
    (x: number, d1: number, d2: number, cumulative: boolean) =>
      cumulative ? fTails(x, whole(d1), whole(d2)).below : density(fDensity(x, whole(d1), whole(d2))),
  ],
  ['fdistrt', (x: number, d1: number, d2: number) => fTails(x, whole(d1), whole(d2)).above],
  ['finv', (p: number, d1: number, d2: number) => fromZero(p, 0, (q) => fQuantile(q, whole(d1), whole(d2)))],
  [
    'finvrt',
    (p: number, d1: number, d2: number) => fromZero(p, 1, (q) => fQuantileAbove(q, whole(d1), whole(d2))),
  ],
  [
    'chisqdist',
    (x: number, df: number, cumulative: boolean) =>
      cumulative ? chiSquaredTails(x, whole(df)).below : density(chiSquaredDensity(x, whole(df))),
  ],
  ['chisqdistrt', (x: number, df: number) => chiSquaredTails(x, whole(df)).above],
  ['chisqinv', (p: number, df: number) => fromZero(p, 0, (q) => chiSquaredQuantile('below', q, whole(df)))],
  ['chisqinvrt', (p: number, df: number) => fromZero(p, 1, (q) => chiSquaredQuantile('above', q, whole(df)))],
  ['normsdist', (z: number, cumulative: boolean) => (cumulative ? normalBelow : normalDensity)(z)],
  ['normsinv', (p: number) => normalQuantile(p)],
  [
    'normdist',
    (x: number, mean: number, sd: number, cumulative: boolean) =>
      cumulative ? normalBelow((x - mean) / sd) : normalDensity((x - mean) / sd) / sd,
  ],
  ['norminv', (p: number, mean: number, sd: number) => mean + sd * normalQuantile(p)],
  ['phi', (z: number) => normalDensity(z)],
  [
    'confidencenorm',
    (alpha: number, sd: number, n: number) => (-normalQuantile(alpha / 2) * sd) / Math.sqrt(whole(n)),
  ],
  [
    'confidencet',
    (alpha: number, sd: number, n: number) =>
      whole(n) === 1 ? divided() : (tQuantileTwoSided(alpha, whole(n) - 1) * sd) / Math.sqrt(whole(n)),
  ],
  ['round', rounding('half')],
  ['roundup', rounding('up')],
  ['rounddown', rounding('down')],
  ['intFunc', Math.floor],
  ['mround', toMultiple],
  ['ceiling', signed(true)],
  ['floor', signed(false)],
  ['ceilingmath', sized(true)],
  ['floormath', sized(false)],
  ['ceilingprecise', sized(true)],
  ['floorprecise', sized(false)],
  ['ttest', tTest],
  ['ftest', fTest],
  ['ztest', zTest],
  ['chisqtest', chiSquaredTest],
  ['gauss', normalBetween],
  [
    'lognormdist',
    (x: number, mean: number, sd: number, cumulative: boolean) => {
      const z = (log(x) - mean) / sd;
      return cumulative ? normalBelow(z) : normalDensity(z) / (x * sd);
    },
  ],
  ['lognorminv', (p: number, mean: number, sd: number) => finite(exp(mean + sd * normalQuantile(p)))],
  ...elementaryBodies,
  ...countBodies,
] as [string, Body][]);

/** TEXT takes texts too: one that reads as a number is formatted as that number. */
const text =
  ({ numberOfText }: Reading) =>
  (value: Inner, pattern: string): Answer => {
    const given =
      typeof value === 'string' ? (numberOfText(value) ?? value) : (plain(value) ?? Number(value === true));
    return withOwnMath(() => formatted(given, pattern));
  };

/** Methods whose body is ours, or refuses numbers that would take too long. */
export const isOwn = (method: string): boolean =>
  method === 'text' || method === 'unique' || ownBodies.has(method) || refusals.has(method);

/** The body for a method: ours, or the engine's own. */
export function bodyFor(
  method: string,
  original: (...args: unknown[]) => unknown,
  reading: Reading,
): (...args: unknown[]) => unknown {
  if (method === 'text') return text(reading) as typeof original;
  if (method === 'unique') return distinctBody(reading, original as never) as typeof original;
  const own = ownBodies.get(method) as typeof original | undefined;
  const refuse = refusals.get(method) as typeof original | undefined;
  if (own) return own;
  const body: typeof original = usesMath.has(method)
    ? (...args) => withOwnMath(() => original(...args))
    : original;
  return refuse ? (...args) => refuse(...args) ?? body(...args) : body;
}
