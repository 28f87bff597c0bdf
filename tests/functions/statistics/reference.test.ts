import { describe, expect, test } from 'vitest';
import { numbersIn } from '../../../functions/core/invoke.ts';
import { type Argument, columnRange, type Range } from '../../../functions/core/value.ts';
import { columnOf, differencesOf } from '../../../functions/statistics/columns.ts';
import { fisherInterval } from '../../../functions/statistics/correlation.ts';
import { mean, median, quantile, standardDeviation } from '../../../functions/statistics/describe.ts';
import {
  fQuantile,
  hedgesJ,
  normalBelow,
  normalQuantile,
  tQuantile,
} from '../../../functions/statistics/distributions.ts';
import { type IccForm, icc, iccLimits } from '../../../functions/statistics/icc.ts';
import { regress } from '../../../functions/statistics/regression.ts';
import { pooledSd } from '../../../functions/statistics/two-groups.ts';
import { type Extra, evaluate, plainly } from '../formula.ts';
import { agrees, readReference } from '../reference.ts';

const values = (arg: Argument) => numbersIn(arg as Range).values;
const sorted = (arg: Argument) => columnOf(arg as Range).sorted;

/** Kernels that no formula reaches by itself. */
const kernels: Readonly<Record<string, Extra>> = {
  days: (n) => columnRange(...Array.from({ length: n as number }, (_, i) => i + 1)),
  differences: (a, b) => columnRange(...differencesOf(a as Range, b as Range)),
  mean: (a) => mean(values(a)),
  sd: (a) => standardDeviation(values(a)),
  median: (a) => median(sorted(a)),
  quantile: (a, p) => quantile(sorted(a), p as number),
  iqr: (a) => quantile(sorted(a), 0.75) - quantile(sorted(a), 0.25),
  'normal-quantile': (p) => normalQuantile(p as number),
  't-quantile': (p, df) => tQuantile(p as number, df as number),
  'F-quantile': (p, d1, d2) => fQuantile(p as number, d1 as number, d2 as number),
  'normal-below': (z) => normalBelow(z as number),
  'hedges-j': (m) => hedgesJ(m as number),
  'pooled-sd': (a, b) => pooledSd(columnOf(a as Range), columnOf(b as Range)),
  fisher: (r, n, side) => fisherInterval(r as number, n as number)[side === 'low' ? 0 : 1],
  'through-origin': (y, x, what) => {
    const rows = Array.from(values(x), (v) => Float64Array.of(v));
    const fit = regress(values(y), rows, false)!;
    return what === 'see' ? Math.sqrt(fit.rss / fit.df) : (what === 'se' ? fit.se : fit.coefficients)[1]!;
  },
  'icc-from-squares': (form, bms, ems, n, k, what) => {
    // Form 3 uses no other mean square.
    const squares = { n, k, bms, ems, jms: 0, wms: 0 } as Parameters<typeof icc>[1];
    if (what === 'icc') return icc(form as IccForm, squares);
    return iccLimits(form as IccForm, squares, 0.95)[what === 'low' ? 0 : 1];
  },
};

const checks = readReference('statistics.csv');
const outside = readReference('statistics_outside.csv');

describe('published and certified values', () => {
  test.each(checks)('$id: $formula gives $expected ($citation)', ({ formula, expected, tolerance }) => {
    const value = plainly(evaluate(formula!, kernels));
    if (expected!.startsWith('#')) expect(value).toBe(expected);
    else if (!agrees(value as number, Number(expected), tolerance!))
      expect.fail(`${formula} gave ${value}, published ${expected} (${tolerance})`);
  });

  test('are all checked, or listed with the reason why no function here covers them', () => {
    const all = Array.from({ length: 230 }, (_, i) => `S${String(i + 1).padStart(3, '0')}`);
    const covered = new Set(checks.map((line) => line.id!));
    const whole = outside.filter((line) => line.part === '').map((line) => line.id!);
    const partly = outside.filter((line) => line.part !== '').map((line) => line.id!);
    expect([...new Set([...covered, ...whole])].sort()).toEqual(all);
    expect(whole.filter((id) => covered.has(id))).toEqual([]);
    expect(partly.filter((id) => !covered.has(id))).toEqual([]);
    expect(outside.filter((line) => (line.reason ?? '').length < 20)).toEqual([]);
  });

  test('carry a citation, a status and a tolerance each', () => {
    const bare = checks.filter(
      (line) => !line.citation || !line.status || !/^(exact|[\d.e-]+ (rel|abs))$/.test(line.tolerance!),
    );
    expect(bare).toEqual([]);
  });
});
