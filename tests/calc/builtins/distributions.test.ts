import { describe, expect, test } from 'vitest';
import type { Issue } from '../../../functions/core/issue.ts';
import { cellEngine, type Tree } from '../../../src/calc/cell-engine/engine.ts';
import { sentenceOf } from '../../../src/calc/sentences.ts';
import { readReference } from '../../functions/reference.ts';
import { Bench, bookOf, f } from '../book-for-test.ts';

/* Expected values: 40-digit arithmetic, tests/reference/distributions.py (mpmath). */
const cases = readReference('distributions.csv').map((line) => ({
  name: line.function!,
  given: line
    .arguments!.split(' ')
    .map((arg) => (arg === 'True' ? true : arg === 'False' ? false : Number(arg))),
  expected: Number(line.value),
}));
const off = (answer: unknown, expected: number) => Math.abs((answer as number) / expected - 1);
const value = (formula: string): number | null | string => {
  const b = new Bench(
    bookOf({ s: { x: [1, 2, null, 4, 5, 6], y: [2, null, 3.5, 5, 5.5, 8], z: [f(formula)] } }),
  );
  return b.value('s', 'z', 0) as number;
};

const tests = new Set(['Z.TEST', 'ZTEST', 'CHISQ.TEST', 'CHITEST']);
const names = [...new Set(cases.map(({ name }) => name))];

test.each([...tests])('%s is right to 12 digits, tails included', (name) => {
  const of = readReference('distributions.csv').filter((line) => line.function === name);
  expect(of.length).toBe(200);
  const formulas = of.map((line) => `${name}(${line.arguments!.replaceAll(' ', ', ')})`);
  const b = new Bench(bookOf({ s: { z: formulas.map((formula) => f(formula)) } }));
  const wrong = b.values('s', 'z').flatMap((answer, i) => {
    const expected = Number(of[i]!.value);
    return off(answer, expected) < 1e-12 ? [] : [{ formula: formulas[i], expected, answer }];
  });
  expect(wrong).toEqual([]);
});

test.each(names.filter((name) => !tests.has(name)))('%s is right to 12 digits, tails included', (name) => {
  const of = cases.filter((one) => one.name === name);
  expect(of.length).toBeGreaterThanOrEqual(200);
  const wrong = of.flatMap(({ given, expected }) => {
    const answer = cellEngine()
      .body(name)!
      .run(...given);
    const whole = cellEngine().evaluate({
      type: 'FUNCTION_CALL',
      procedureName: name,
      args: given.map((given): Tree => ({ type: 'NUMBER', value: given as never })),
    });
    return off(answer, expected) < 1e-12 && Object.is(whole, answer)
      ? []
      : [{ given, expected, answer, whole }];
  });
  expect(wrong).toEqual([]);
});

// Expected: 40-digit arithmetic, printed to the digits given.
test.each([
  ['T.DIST.2T(12, 20)', 1.3595557e-10, 1e-8],
  ['NORM.S.DIST(-10, TRUE)', 7.61985e-24, 1e-6],
  ['CHISQ.DIST.RT(100, 3)', 1.6e-21, 0.05],
  ['F.INV.RT(.05, 3, 20)', 3.09839121, 1e-8],
  ['T.INV.2T(1E-12, 20)', 15.72892, 1e-7],
  ['CONFIDENCE.T(.05, 1, 50)', 0.284196855, 1e-8],
  ['NORM.S.INV(1E-300)', -37.0471, 1e-6],
] as const)('%s keeps its digits', (formula, expected, tolerance) => {
  expect(off(value(formula), expected)).toBeLessThan(tolerance);
});

// From the definitions of the densities: they go as x^(d/2 − 1), which at 0 is 0, 1 or infinite.
test.each([
  ['CHISQ.DIST(0, 1, FALSE)', '#NUM!'],
  ['CHISQ.DIST(0, 2, FALSE)', 0.5],
  ['CHISQ.DIST(0, 3, FALSE)', 0],
  ['F.DIST(0, 1, 9, FALSE)', '#NUM!'],
  ['F.DIST(0, 2, 9, FALSE)', 1],
  ['F.DIST(0, 3, 9, FALSE)', 0],
])('the density %s is %s', (formula, expected) => {
  expect(value(formula)).toBe(expected);
});

test('an infinite density is said in a sentence', () => {
  const b = new Bench(bookOf({ s: { z: [f('CHISQ.DIST(0, 1, FALSE)')] } }));
  expect(sentenceOf(b.column('s', 'z')[0] as Issue)).toMatch(
    /density is infinite at 0 .* Ask for a value above 0/,
  );
});

describe('the t-test', () => {
  test.each(['T.TEST', 'TTEST'])('%s of pairs leaves out a pair with a blank on either side', (name) => {
    // Worked out by hand: differences −1, −1, −.5, −2; mean −1.125, SD .62915, t −3.57624, 3 degrees of freedom.
    expect(value(`${name}(s.x, s.y, 2, 1)`)).toBeCloseTo(0.03739, 5);
    expect(value(`${name}(s.x, s.y, 1, 1)`)).toBeCloseTo(0.03739 / 2, 5);
  });
  test('Student’s sleep data give the published p of pairs', () => {
    // Student 1908, Biometrika 6:1–25, the data; p of pairs = .002833 as R's documentation of `sleep` has it, from memory.
    const a = '{.7;-1.6;-.2;-1.2;-.1;3.4;3.7;.8;0;2}';
    const b = '{1.9;.8;1.1;.1;-.1;4.4;5.5;1.6;4.6;3.4}';
    expect(value(`T.TEST(${a}, ${b}, 2, 1)`)).toBeCloseTo(0.002833, 6);
    // From memory: Welch .07939, equal variances .07919.
    expect(value(`T.TEST(${a}, ${b}, 2, 3)`)).toBeCloseTo(0.07939, 5);
    expect(value(`T.TEST(${a}, ${b}, 2, 2)`)).toBeCloseTo(0.07919, 5);
  });
  test('ranges of two lengths, one pair and pairs that all differ alike have an error', () => {
    expect(value('T.TEST({1;2;3}, {1;2}, 2, 1)')).toBe('#N/A');
    expect(value('T.TEST({1;2}, {2;3}, 2, 1)')).toBe('#DIV/0!');
    expect(value('T.TEST({1}, {2}, 2, 1)')).toBe('#DIV/0!');
  });
});

test.each([
  'CORREL',
  'PEARSON',
  'COVAR',
  'COVARIANCE.S',
  'SLOPE',
  'INTERCEPT',
  'RSQ',
  'STEYX',
  'SUMXMY2',
  'SUMX2MY2',
  'SUMX2PY2',
])('%s leaves out a pair with a blank on either side', (name) => {
  expect(value(`${name}(s.x, s.y)`)).toBeCloseTo(value(`${name}({1;4;5;6}, {2;5;5.5;8})`) as number, 12);
});
