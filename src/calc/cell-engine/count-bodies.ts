/**
 * Bodies that stand in for those of the cell engine whose loops grow with the size of a number, or lose digits with it:
 * distributions of counts, gamma and beta, sums of payments, multinomial coefficients. The value comes from a closed form.
 */
import { CellError, ErrorType, type SimpleRangeValue } from 'hyperformula';
import { expm1 } from '../../../functions/core/elementary/expm1.ts';
import { log1p } from '../../../functions/core/elementary/log1p.ts';
import { betaRatio, betaTails, betaWeight } from '../../../functions/statistics/beta.ts';
import {
  binomialAt,
  binomialQuantile,
  binomialUpTo,
  hypergeometricAt,
  hypergeometricUpTo,
  negativeBinomialAt,
  negativeBinomialUpTo,
  poissonAt,
  poissonUpTo,
} from '../../../functions/statistics/discrete.ts';
import { gammaQuantile, gammaTails, gammaWeight } from '../../../functions/statistics/gamma.ts';

type Answer = number | CellError;

/** Largest count or shape of the distributions whose continued fraction takes about as many steps as its root. */
const LARGEST_COUNT = 1e9;
/** Highest order of a Bessel function: its recurrence takes as many steps. */
const HIGHEST_ORDER = 1000;
/** Longest life of something that loses value, in periods: DB adds them up one by one. */
const LONGEST_LIFE = 10_000;

const whole = Math.trunc;
const wrongOrder = () => new CellError(ErrorType.NUM, 'Wrong order of values.');
const tooSmall = () => new CellError(ErrorType.NUM, 'Value too small.');
const tooLarge = () => new CellError(ErrorType.NUM, 'Value too large.');
const tooHard = () => new CellError(ErrorType.NUM, 'Too large to compute.');
const endFirst = () => new CellError(ErrorType.NUM, 'End period needs to be at least start period.');
const finite = (value: number): Answer =>
  Number.isFinite(value) ? value : new CellError(ErrorType.NUM, 'NaN or infinite value encountered.');

/** Runs over counts of a size that can be computed. */
const bounded = (counts: readonly number[], compute: () => number): Answer =>
  counts.some((count) => count > LARGEST_COUNT) ? tooHard() : finite(compute());

function beta(x: number, a: number, b: number, cumulative: boolean, from: number, to: number): Answer {
  if (x <= from) return tooSmall();
  if (x >= to) return tooLarge();
  const [below, above] = [(x - from) / (to - from), (to - x) / (to - from)];
  return bounded([a, b], () =>
    cumulative
      ? betaTails(below, above, a, b).below
      : (betaWeight(below, above, a, b) * a * b) / ((a + b) * below * above),
  );
}

function betaInverse(p: number, a: number, b: number, from: number, to: number): Answer {
  if (from >= to) return wrongOrder();
  return bounded([a, b], () => {
    if (p === 1) return to;
    const ratio = p < 0.5 ? betaRatio('below', p, a, b) : betaRatio('above', 1 - p, a, b);
    return from + (to - from) * (ratio / (1 + ratio));
  });
}

function gamma(x: number, shape: number, scale: number, cumulative: boolean): Answer {
  if (cumulative) return finite(gammaTails(shape, x / scale).below);
  if (x === 0) return finite(shape < 1 ? Infinity : shape === 1 ? 1 / scale : 0);
  return finite((gammaWeight(shape, x / scale) * shape) / x);
}

function gammaInverse(p: number, shape: number, scale: number): Answer {
  if (p === 0) return 0;
  return finite(scale * (p < 0.5 ? gammaQuantile('below', p, shape) : gammaQuantile('above', 1 - p, shape)));
}

function hypergeometric(k: number, drawn: number, marked: number, all: number, cumulative: boolean): Answer {
  if (k > drawn || k > marked || drawn > all || marked > all || k + all < marked + drawn) return tooLarge();
  const counts = [k, drawn, marked, all].map(whole) as [number, number, number, number];
  return bounded(counts, () => (cumulative ? hypergeometricUpTo : hypergeometricAt)(...counts));
}

/** How many ways there are to part so many things into groups of these sizes: a product of binomial coefficients. */
function multinomial(...sizes: number[]): Answer {
  let all = 0;
  let ways = 1;
  for (const given of sizes) {
    if (given < 0) return tooSmall();
    const size = whole(given);
    const [few, many] = size < all ? [size, all] : [all, size];
    // beyond some thousand steps the product is beyond the largest number
    for (let i = 1; i <= few && ways < Infinity; i++) ways = (ways * (many + i)) / i;
    all += size;
  }
  return finite(Math.round(ways));
}

/** A loan that is paid back in equal amounts at the end of each period. */
interface Loan {
  readonly rate: number;
  readonly periods: number;
  readonly value: number;
}
const growth = ({ rate }: Loan, periods: number): number => expm1(-periods * log1p(rate));
const payment = (loan: Loan): number => (loan.value * loan.rate) / growth(loan, loan.periods);

/** What is paid back from one period to another, both included: the difference of what is owed. */
function principal(loan: Loan, start: number, end: number): number {
  const discount = 1 + growth(loan, loan.periods - end);
  return (-loan.value * discount * growth(loan, end - start + 1)) / growth(loan, loan.periods);
}

/** Few payments of interest are added up, with all their digits; many are payments less what is paid back. */
function interest(loan: Loan, start: number, end: number): number {
  const count = end - start + 1;
  if (count > 1000) return count * payment(loan) - principal(loan, start, end);
  let shares = 0;
  for (let m = start - 1; m < end; m++) shares += growth(loan, loan.periods - m);
  return (-loan.value * loan.rate * shares) / growth(loan, loan.periods);
}

type Payments = (
  rate: number,
  periods: number,
  value: number,
  from: number,
  to: number,
  type: number,
) => Answer;

/** Paid at the beginning of periods, everything but the first payment comes one period earlier; that bears no interest. */
const paid =
  (sum: (loan: Loan, start: number, end: number) => number, first: (loan: Loan) => number): Payments =>
  (rate, periods, value, start, end, type) => {
    if (start > end) return endFirst();
    const loan = { rate, periods, value };
    if (type === 0) return finite(sum(loan, start, end));
    const rest = end > 1 ? sum(loan, Math.max(2, start), end) : 0;
    return finite(((start === 1 ? first(loan) : 0) + rest) / (1 + rate));
  };

export const countBodies: readonly (readonly [method: string, body: (...args: never[]) => Answer])[] = [
  [
    'poissondist',
    (k: number, mean: number, cumulative: boolean) =>
      finite((cumulative ? poissonUpTo : poissonAt)(whole(k), mean)),
  ],
  [
    'binomialdist',
    (k: number, n: number, p: number, cumulative: boolean) =>
      k > n
        ? wrongOrder()
        : bounded([n], () => (cumulative ? binomialUpTo : binomialAt)(whole(k), whole(n), p)),
  ],
  [
    'binomialinv',
    (n: number, p: number, share: number) => bounded([n], () => binomialQuantile(whole(n), p, share)),
  ],
  [
    'negbinomdist',
    (failures: number, successes: number, p: number, cumulative: boolean) =>
      bounded([failures, successes], () =>
        (cumulative ? negativeBinomialUpTo : negativeBinomialAt)(whole(failures), whole(successes), p),
      ),
  ],
  ['hypgeomdist', hypergeometric],
  ['betadist', beta],
  ['betainv', betaInverse],
  ['gammadist', gamma],
  ['gammainv', gammaInverse],
  ['multinomial', multinomial],
  ['cumipmt', paid(interest, () => 0)],
  ['cumprinc', paid(principal, payment)],
];

const order = (_x: number, n: number): CellError | undefined => (n > HIGHEST_ORDER ? tooHard() : undefined);

/** Most products of a matrix product, or cells of all windows that a pool looks at. */
const MOST_STEPS = 20_000_000;

const product = (left: SimpleRangeValue, right: SimpleRangeValue): CellError | undefined =>
  left.height() * left.width() * right.width() > MOST_STEPS ? tooHard() : undefined;

const pool = (cells: SimpleRangeValue, size: number, step: number = size): CellError | undefined => {
  const windows = (1 + (cells.height() - size) / step) * (1 + (cells.width() - size) / step);
  return size > 0 && step > 0 && windows * size * size > MOST_STEPS ? tooHard() : undefined;
};

/** Numbers that the cell engine's own body would be at for too long; undefined lets it go on. */
export const refusals: ReadonlyMap<string, (...args: never[]) => CellError | undefined> = new Map<
  string,
  (...args: never[]) => CellError | undefined
>([
  ['besselifn', order],
  ['besseljfn', order],
  ['besselkfn', order],
  ['besselyfn', order],
  ['mmult', product],
  ['maxpool', pool],
  ['medianpool', pool],
  ['db', (_cost: number, _salvage: number, life: number) => (life > LONGEST_LIFE ? tooHard() : undefined)],
]);
