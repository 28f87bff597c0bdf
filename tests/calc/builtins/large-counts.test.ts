import { expect, test } from 'vitest';
import { type Issue, isIssue } from '../../../functions/core/issue.ts';
import { gammaTails } from '../../../functions/statistics/gamma.ts';
import { cellEngine, type Tree } from '../../../src/calc/cell-engine/engine.ts';
import { sentenceOf } from '../../../src/calc/sentences.ts';
import { readReference } from '../../functions/reference.ts';
import { Bench, bookOf, f } from '../book-for-test.ts';

/* Expected values: 50-digit arithmetic, tests/reference/large_counts.py (mpmath). */
const cases = readReference('large_counts.csv').map((line) => ({
  name: line.function!,
  given: line
    .arguments!.split(' ')
    .map((arg) => (arg === 'True' ? true : arg === 'False' ? false : Number(arg)))
    // the body takes the ends of the scale too
    .concat(line.function === 'BETA.DIST' ? [0, 1] : []),
  expected: Number(line.value),
}));

/** A formula in a column of three rows, where it is the same in each. */
const answer = (formula: string): number | Issue =>
  new Bench(bookOf({ s: { x: [1, 2, 3], z: [f(formula)] } })).column('s', 'z')[0] as number | Issue;
/** The sentence instead of a value. */
const refusal = (formula: string): string => {
  const value = answer(formula);
  return isIssue(value) ? sentenceOf(value) : `no error: ${value}`;
};

test.each([...new Set(cases.map(({ name }) => name))])('%s is right for small and large counts', (name) => {
  const wrong = cases
    .filter((one) => one.name === name)
    .flatMap(({ given, expected }) => {
      const value = cellEngine()
        .body(name)!
        .run(...given) as number;
      const whole = cellEngine().evaluate({
        type: 'FUNCTION_CALL',
        procedureName: name,
        args: given.map((given): Tree => ({ type: 'NUMBER', value: given as never })),
      });
      const asNumber = typeof whole === 'object' && 'val' in whole ? whole.val : whole;
      return Math.abs(value / expected - 1) < 1e-11 && Object.is(asNumber, value)
        ? []
        : [{ given, expected, value, whole: asNumber }];
    });
  expect(wrong).toEqual([]);
});

test('Poisson with 1E300 expected is one half at its mean', () => {
  // the median of Poisson is within 1 of its mean (Choi 1994, Proc AMS 121:245–251): at 1E300 one half to every digit
  expect(answer('POISSON.DIST(1E300, 1E300, TRUE)')).toBe(0.5);
});

test.each([120_000, 1e6])('the expansion for a large shape joins the series: shape %f', (a) => {
  for (const z of [-20, -5, -1, 0, 1, 5, 20]) {
    // P(a, x) − P(a + 1, x) = x^a e^−x/Γ(a + 1), whichever way they are computed (NIST DLMF 8.8.5)
    const x = a + z * Math.sqrt(a);
    const [low, high] = [gammaTails(a, x), gammaTails(a + 1, x)];
    const step = z < 0 ? low.below - high.below : high.above - low.above;
    expect(Math.abs(step / (low.slope / a) - 1)).toBeLessThan(1e-6);
  }
});

test('quantiles of large shapes are found again by their distribution', () => {
  expect(answer('GAMMA.DIST(GAMMA.INV(.5, 1E9, 1E9), 1E9, 1E9, TRUE)')).toBeCloseTo(0.5, 9);
  expect(answer('BETA.INV(.5, 1E9, 1E9)')).toBeCloseTo(0.5, 12);
  expect(answer('BINOM.INV(1E9, .5, .5)')).toBe(5e8);
});

test('multinomial coefficients are exact, and one beyond the largest number is an error', () => {
  // 12!/(3! 4! 5!) = 27720; (1E9 + 1)!/(1E9)! = 1E9 + 1
  expect(answer('MULTINOMIAL(3, 4, 5)')).toBe(27720);
  expect(answer('MULTINOMIAL(1E9, 1)')).toBe(1_000_000_001);
  expect(refusal('MULTINOMIAL(1E9, 1E9)')).toMatch(/no finite number/);
});

test.each([
  'BESSELJ(1.5, 1E9)',
  'BESSELI(1.5, 1E9)',
  'BESSELK(1.5, 1E9)',
  'BESSELY(1.5, 1E9)',
  'DB(1E6, 1, 1E9, 1E9)',
  'NEGBINOM.DIST(1E300, 1E300, .5, TRUE)',
  'BINOM.DIST(1E12, 2E12, .5, TRUE)',
  'BETA.DIST(.5, 1E300, 1E300, TRUE)',
])('%s is refused with a sentence', (formula) => {
  expect(refusal(formula)).toMatch(/a number is larger than it can compute with/);
});

test('every pair of two long sequences is refused with a sentence', () => {
  expect(refusal('SUM(IF(SEQUENCE(10000)>0, SEQUENCE(1, 10000)))')).toMatch(/more than .* cells/);
});

test('many ranks, shares and criteria over a long sequence are answered at once', () => {
  // of 1 … 10,000: ranks, shares and criteria are these numbers again; n (n + 1)/2 = 50005000
  expect(answer('SUM(LARGE(SEQUENCE(10000), SEQUENCE(10000)))')).toBe(50_005_000);
  expect(answer('SUM(PERCENTILE(SEQUENCE(10000), (SEQUENCE(10000)-1)/9999))')).toBeCloseTo(50_005_000, 3);
  expect(answer('SUM(COUNTIF(SEQUENCE(10000), SEQUENCE(10000)))')).toBe(10_000);
});
