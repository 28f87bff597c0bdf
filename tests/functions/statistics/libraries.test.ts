import fInverse from '@stdlib/stats-base-dists-f-quantile';
import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import normalInverse from '@stdlib/stats-base-dists-normal-quantile';
import tCdf from '@stdlib/stats-base-dists-t-cdf';
import tInverse from '@stdlib/stats-base-dists-t-quantile';
import fc from 'fast-check';
import { Matrix, QrDecomposition } from 'ml-matrix';
import * as simple from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { columnRange } from '../../../functions/core/value.ts';
import { columnOf, pairsOf } from '../../../functions/statistics/columns.ts';
import { pearson, spearman } from '../../../functions/statistics/correlation.ts';
import { medianDeviation, quantile } from '../../../functions/statistics/describe.ts';
import {
  chiSquareQuantile,
  fQuantile,
  hedgesJ,
  normalBelow,
  normalQuantile,
  tQuantile,
  tTwoSided,
} from '../../../functions/statistics/distributions.ts';
import { lineThrough } from '../../../functions/statistics/line.ts';
import { regress } from '../../../functions/statistics/regression.ts';
import { readReference } from '../reference.ts';

const measures = fc.array(fc.double({ min: -500, max: 500, noNaN: true, noDefaultInfinity: true }), {
  minLength: 4,
  maxLength: 60,
});
const pairs = fc
  .array(
    fc.tuple(
      fc.integer({ min: 0, max: 400 }).map((v) => v / 4),
      fc.integer({ min: 0, max: 400 }).map((v) => v / 8),
    ),
    { minLength: 4, maxLength: 60 },
  )
  .filter((list) => new Set(list.map(([x]) => x)).size > 2 && new Set(list.map(([, y]) => y)).size > 2);
const close = (value: number, other: number, digits: number) =>
  expect(Math.abs(value - other)).toBeLessThanOrEqual(10 ** -digits * Math.max(1, Math.abs(other)));

describe('quantiles of the normal distribution, t, F and χ²', () => {
  test.each(readReference('quantiles.csv'))(
    '$distribution($df1, $df2) at $p is $quantile, computed at 40 digits',
    ({ distribution, p, df1, df2, quantile: expected }) => {
      const by: Record<string, () => number> = {
        normal: () => normalQuantile(Number(p)),
        t: () => tQuantile(Number(p), Number(df1)),
        F: () => fQuantile(Number(p), Number(df1), Number(df2)),
        chi2: () => chiSquareQuantile('below', Number(p), Number(df1)),
      };
      const value = by[distribution!]!();
      // Near 1, p itself is only a double: 1 − .9995 has 12 digits.
      close(value / Number(expected), 1, 12);
    },
  );

  test('the two-sided p turns the quantile back', () => {
    for (const line of readReference('quantiles.csv').filter(({ distribution }) => distribution === 't'))
      close(tTwoSided(Number(line.quantile), Number(line.df1)) / (2 * (1 - Number(line.p))), 1, 11);
  });
});

describe('Hedges J', () => {
  // Γ(m/2)/(√(m/2)Γ((m−1)/2)) at 40 digits with mpmath, on both sides of the change from logarithms to the series.
  test.each([
    [1.5, 0.3902762188691763],
    [3, 0.7236012545582676],
    [50, 0.9849119422955726],
    [200, 0.9962445224791265],
    [201, 0.996263233605774],
    [250, 0.9969964955074352],
    [1000, 0.9992497811797163],
    [20000, 0.9999624994531162],
  ])('J(%d) is %d', (m, expected) => close(hedgesJ(m) / expected, 1, 13));
});

describe('a general-purpose library agrees on', () => {
  test('mean, SD, quantiles and median deviation of random columns', () => {
    fc.assert(
      fc.property(measures, (values) => {
        const column = columnOf(columnRange(...values));
        close(column.mean, simple.mean(values), 11);
        close(column.sd, simple.sampleStandardDeviation(values), 10);
        close(medianDeviation(column.sorted), simple.medianAbsoluteDeviation(values), 11);
        close(quantile(column.sorted, 0.5), simple.median(values), 12);
      }),
    );
  });

  test('slope, intercept, correlation and rank correlation of random pairs', () => {
    fc.assert(
      fc.property(pairs, (list) => {
        const [x, y] = [list.map(([v]) => v), list.map(([, v]) => v)];
        const both = pairsOf(columnRange(...x), columnRange(...y));
        const line = lineThrough(both);
        const other = simple.linearRegression(list.map(([a, b]) => [a, b]));
        close(line.slope, other.m, 9);
        close(line.intercept, other.b, 9);
        close(pearson(both), simple.sampleCorrelation(x, y), 10);
        if (new Set(x).size === x.length && new Set(y).size === y.length)
          close(spearman(both), simple.sampleRankCorrelation(x, y), 10);
      }),
    );
  });

  test('R squared of the line', () => {
    fc.assert(
      fc.property(pairs, (list) => {
        const points = list.map(([a, b]) => [a, b]);
        const line = lineThrough(
          pairsOf(columnRange(...list.map(([a]) => a)), columnRange(...list.map(([, b]) => b))),
        );
        close(
          1 - line.rss / line.syy,
          simple.rSquared(points, simple.linearRegressionLine(simple.linearRegression(points))),
          9,
        );
      }),
    );
  });
});

describe('packages of distributions and of linear algebra agree on', () => {
  // Where the packages hold: further out they answer infinity for F, and 1 for the tail of a t near 0.
  const share = fc.double({ min: 0.001, max: 0.999, noNaN: true });
  const freedom = fc.double({ min: 0.2, max: 8, noNaN: true }).map(Math.exp);

  test('quantiles and tails of t, F and the normal distribution', () => {
    fc.assert(
      fc.property(share, freedom, freedom, (p, d1, d2) => {
        close(fQuantile(p, d1, d2) / fInverse(p, d1, d2), 1, 11);
        if (Math.abs(p - 0.5) > 1e-4) close(tQuantile(p, d1) / tInverse(p, d1), 1, 11);
        const t = Math.log(d2);
        close(tTwoSided(t, d1) / (2 * tCdf(-Math.abs(t), d1)), 1, 11);
        // The package keeps 12 digits here: at 1e-6 the digits above hold ours to 16.
        close(normalQuantile(p), normalInverse(p, 0, 1), 11);
        close(normalBelow(t) / normalCdf(t, 0, 1), 1, 11);
      }),
      { numRuns: 500 },
    );
  });

  test('coefficients of multiple regression', () => {
    const block = fc.integer({ min: 1, max: 4 }).chain((p) =>
      fc.array(fc.array(fc.integer({ min: -90, max: 90 }), { minLength: p + 1, maxLength: p + 1 }), {
        minLength: p + 3,
        maxLength: 30,
      }),
    );
    fc.assert(
      fc.property(block, fc.boolean(), (rows, withConstant) => {
        const y = Float64Array.from(rows, (row) => row[0]!);
        const xs = rows.map((row) => Float64Array.from(row.slice(1)));
        const fit = regress(y, xs, withConstant);
        const design = new Matrix(xs.map((row) => (withConstant ? [1, ...row] : [...row])));
        const qr = new QrDecomposition(design);
        fc.pre(fit !== undefined && qr.upperTriangularMatrix.diag().every((v) => Math.abs(v) > 1e-3));
        const other = qr.solve(Matrix.columnVector(Array.from(y))).to1DArray();
        const ours = withConstant ? fit!.coefficients : fit!.coefficients.slice(1);
        ours.forEach((b, j) => {
          close(b, other[j]!, 8);
        });
      }),
    );
  });
});
