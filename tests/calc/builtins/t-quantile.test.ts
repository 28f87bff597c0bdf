import { expect, test } from 'vitest';
import { builtins } from '../../../src/calc/builtins/index.ts';
import { readReference } from '../../functions/reference.ts';

/* Expected values: 40-digit quantiles of tests/reference/quantiles.py (mpmath). */
const cases = readReference('quantiles.csv').filter(
  ({ distribution, df1 }) => distribution === 't' && Number.isInteger(Number(df1)),
);

test('the quantiles of Student’s t are right to 12 digits', () => {
  expect(cases.length).toBeGreaterThan(20);
  for (const { p, df1, quantile } of cases) {
    const [share, df, expected] = [Number(p), Number(df1), Number(quantile)];
    const answer = builtins.get('T.INV')!.compute([share, df]) as number;
    expect(Math.abs(answer / expected - 1)).toBeLessThan(1e-12);
  }
});

test.each(['T.INV.2T', 'TINV'])('%s shares the probability out to both tails', (name) => {
  const of = (...args: number[]) => builtins.get(name)!.compute(args);
  // Fisher & Yates, Statistical Tables, table III, 5 % at 10 degrees of freedom: 2.228; at 1: 12.706.
  expect(of(0.05, 10)).toBeCloseTo(2.228, 3);
  expect(of(0.05, 1)).toBeCloseTo(12.706, 3);
  expect(of(0.05, 10.9)).toBe(of(0.05, 10));
  expect(of(0, 10)).toMatchObject({ code: '#NUM!' });
  expect(of(0.05, 0.5)).toMatchObject({ code: '#NUM!' });
});
