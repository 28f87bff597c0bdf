import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fInverse from '@stdlib/stats-base-dists-f-quantile';
import tInverse from '@stdlib/stats-base-dists-t-quantile';
import { Matrix, solve } from 'ml-matrix';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { stepsOf } from '../../src/guides/index.ts';
import { buildCommand, folder, leverbook } from '../cli/run.ts';
import { ankleFromWall, leanOf } from '../session/posture.ts';
import { withoutFileAccess } from './browser.ts';
import { inBrowser } from './in-browser.ts';
import { mean, n, sd, sum } from './journeys/figures.ts';
import { contents, missingSteps, open, rowsOf, sampleFile, saved } from './journeys/journey.ts';
import { researcherJourney } from './journeys/researcher.ts';

/**
 * The guide for the researcher, step by step in a real browser. What the numbers should be is worked out here from the
 * files themselves: mean squares and ICC(2,1), ICC(3,1) by Shrout & Fleiss 1979 (Psychol Bull 86:420–428), the interval by
 * McGraw & Wong 1996 (Psychol Methods 1:30–46) with the F quantiles of @stdlib, SEM and MDC by Weir 2005 (J Strength Cond
 * Res 19:231–240), limits of agreement by Bland & Altman 1986, percentiles R-7 (Hyndman & Fan 1996, Am Stat 50:361–365),
 * least squares solved by ml-matrix.
 */
let unbuild: () => void;
const watched = inBrowser({ viewport: { width: 3500, height: 1100 }, first: withoutFileAccess });
beforeAll(async () => {
  unbuild = await buildCommand();
});
afterAll(async () => {
  unbuild?.();
});

const file = (name: string): string => readFileSync(sampleFile('wall-test-reliability', name), 'utf8');
const value = (text: string | undefined): number | null => (!text || text === 'NA' ? null : n(text));

const trials = rowsOf(file('trials.csv'))
  .slice(1)
  .map((row) => ({
    id: row.Person!,
    a: ['A 1', 'A 2', 'A 3'].map((trial) => value(row[trial])),
    b: ['B 1', 'B 2', 'B 3'].map((trial) => value(row[trial])),
  }));
const meanOf = (values: readonly (number | null)[]): number | null =>
  values.some((one) => one === null) ? null : mean(values as number[]);
const designs: Readonly<Record<string, readonly (readonly (number | null)[])[]>> = {
  'Tester A, three trials': trials.map(({ a }) => a),
  'Tester B, three trials': trials.map(({ b }) => b),
  'A and B, first trials': trials.map(({ a, b }) => [a[0]!, b[0]!]),
  'A and B, means of three': trials.map(({ a, b }) => [meanOf(a), meanOf(b)]),
};

/** Two-way analysis of variance without replication. */
function reliability(all: readonly (readonly (number | null)[])[]) {
  const rows = all.filter((row) => row.every((one) => one !== null)) as number[][];
  const [count, k] = [rows.length, rows[0]!.length];
  const grand = mean(rows.flat());
  const columns = Array.from({ length: k }, (_, c) => mean(rows.map((row) => row[c]!)));
  const betweenRows = (k * sum(rows.map((row) => (mean(row) - grand) ** 2))) / (count - 1);
  const betweenColumns = (count * sum(columns.map((one) => (one - grand) ** 2))) / (k - 1);
  const residual =
    sum(rows.map((row) => sum(row.map((one, c) => (one - mean(row) - columns[c]! + grand) ** 2)))) /
    ((count - 1) * (k - 1));
  const agreement =
    (betweenRows - residual) / (betweenRows + (k - 1) * residual + (k * (betweenColumns - residual)) / count);
  const [p, q] = [
    (k * agreement) / (count * (1 - agreement)),
    1 + (k * agreement * (count - 1)) / (count * (1 - agreement)),
  ];
  const v =
    (p * betweenColumns + q * residual) ** 2 /
    ((p * betweenColumns) ** 2 / (k - 1) + (q * residual) ** 2 / ((count - 1) * (k - 1)));
  const f1 = fInverse(0.975, count - 1, v);
  const f2 = fInverse(0.975, v, count - 1);
  const both = k * betweenColumns + (k * count - k - count) * residual;
  return {
    agreement,
    consistency: (betweenRows - residual) / (betweenRows + (k - 1) * residual),
    low: (count * (betweenRows - f1 * residual)) / (f1 * both + count * betweenRows),
    high: (count * (f2 * betweenRows - residual)) / (both + count * f2 * betweenRows),
    residual,
    // Of the people that the ICC is of: those with every trial.
    spread: sd(rows.flat()),
  };
}

const people = rowsOf(file('people.csv'), ';').map((row, i) => {
  const [femur, tibia, trunk, foot] = [n(row.Femur), n(row.Tibia), n(row.Trunk), n(row.Foot)];
  const wall = meanOf(trials[i]!.a);
  const ankle = wall === null ? null : ankleFromWall(wall, tibia, foot);
  const seen =
    row['Hip x'] === 'NA'
      ? null
      : (Math.atan2(n(row['Shoulder x']) - n(row['Hip x']), n(row['Shoulder y']) - n(row['Hip y'])) * 180) /
        Math.PI;
  return {
    id: row.Person!,
    sex: row.Sex === 'F' ? 'female' : 'male',
    Stature: n(row.Stature),
    'Femur / tibia': femur / tibia,
    'Trunk / femur': trunk / femur,
    'Ankle range': ankle,
    'Observed lean': seen,
    lean: ankle === null ? null : leanOf({ femur, tibia, trunk, foot, ankle })!,
  };
});

function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const at = share * (sorted.length - 1);
  const below = sorted[Math.floor(at)]!;
  return below + (at - Math.floor(at)) * ((sorted[Math.floor(at) + 1] ?? below) - below);
}

function regression() {
  const whole = people.filter((one) => one['Ankle range'] !== null && one['Observed lean'] !== null);
  const x = new Matrix(
    whole.map((one) => [1, one['Ankle range']!, one['Femur / tibia'], one['Trunk / femur']]),
  );
  const y = Matrix.columnVector(whole.map((one) => one['Observed lean']!));
  const b = solve(x, y, true);
  const left = Matrix.sub(y, x.mmul(b)).to1DArray();
  const freedom = whole.length - 4;
  const variance = sum(left.map((one) => one * one)) / freedom;
  const spread = solve(x.transpose().mmul(x), Matrix.eye(4)).diagonal();
  const centre = mean(y.to1DArray());
  const total = sum(y.to1DArray().map((one) => (one - centre) ** 2));
  return {
    n: whole.length,
    b: b.to1DArray(),
    se: spread.map((one) => Math.sqrt(one * variance)),
    t: tInverse(0.975, freedom),
    r2: 1 - (variance * freedom) / total,
    see: Math.sqrt(variance),
  };
}

/** The sheets as the page saved them. */
const texts = new Map<string, string>();

const checks: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  trials: async (page) => {
    const { rows } = await saved(page);
    expect(rows.map((row) => value(row['A 3']))).toEqual(trials.map(({ a }) => a[2]));
  },
  reliability: async (page) => {
    const { rows } = await saved(page);
    for (const row of rows) {
      const { agreement, low, high, residual, spread } = reliability(designs[row.Design!]!);
      const sem = spread * Math.sqrt(1 - agreement);
      expect(n(row.ICC)).toBeCloseTo(agreement, 9);
      expect(n(row['ICC, low'])).toBeCloseTo(low, 7);
      expect(n(row['ICC, high'])).toBeCloseTo(high, 7);
      expect(n(row['SEM, agreement'])).toBeCloseTo(sem, 9);
      expect(n(row['MDC, agreement'])).toBeCloseTo(1.959963984540054 * Math.SQRT2 * sem, 9);
      expect(n(row['SEM, consistency'])).toBeCloseTo(Math.sqrt(residual), 9);
      expect(n(row['MDC, consistency'])).toBeCloseTo(1.959963984540054 * Math.SQRT2 * Math.sqrt(residual), 9);
    }
    const differences = trials.map(({ a, b }) => a[0]! - b[0]!);
    const limit = 1.959963984540054 * sd(differences);
    expect(n(rows[2]!['A − B'])).toBeCloseTo(mean(differences), 9);
    expect(n(rows[2]!['Limit, low'])).toBeCloseTo(mean(differences) - limit, 9);
    expect(n(rows[2]!['Limit, high'])).toBeCloseTo(mean(differences) + limit, 9);
  },
  form: async (page) => {
    const { rows } = await saved(page);
    for (const row of rows) expect(n(row.ICC)).toBeCloseTo(reliability(designs[row.Design!]!).consistency, 9);
  },
  working: async (page) => {
    expect(await page.locator('.working').textContent()).toContain('Shrout');
  },
  agreement: async (page) => {
    expect(await page.locator('.chart-place').textContent()).toContain('2 of 40 rows are left out');
  },
  people: async (page) => {
    const { rows } = await saved(page);
    rows.forEach((row, i) => {
      const one = people[i]!;
      expect(row.Sex).toBe(one.sex);
      if (one['Observed lean'] === null) expect(row['Observed lean']).toBe('');
      else expect(n(row['Observed lean'])).toBeCloseTo(one['Observed lean'], 9);
      if (one.lean === null) expect(row['Minimum lean (model)']).toBe('');
      else expect(n(row['Minimum lean (model)'])).toBeCloseTo(one.lean, 9);
    });
  },
  groups: async (page) => {
    const { rows } = await saved(page);
    for (const measure of [
      'Stature',
      'Femur / tibia',
      'Trunk / femur',
      'Ankle range',
      'Observed lean',
    ] as const)
      for (const sex of ['female', 'male']) {
        const row = rows.find((one) => one.Measure!.replace(/, .*/, '') === measure && one.Sex === sex)!;
        const values = people.flatMap((one) => {
          const found = one[measure];
          return one.sex === sex && found !== null ? [found] : [];
        });
        expect(n(row.n)).toBe(values.length);
        expect(n(row.Mean)).toBeCloseTo(mean(values), 9);
        expect(n(row.SD)).toBeCloseTo(sd(values), 9);
        expect(n(row['5 %'])).toBeCloseTo(percentile(values, 0.05), 9);
        expect(n(row.Median)).toBeCloseTo(percentile(values, 0.5), 9);
        expect(n(row['95 %'])).toBeCloseTo(percentile(values, 0.95), 9);
      }
  },
  regression: async (page) => {
    const { rows } = await saved(page);
    const { n: count, b, se, t, r2, see } = regression();
    b.forEach((coefficient, i) => {
      const row = rows[i]!;
      expect(n(row.Value)).toBeCloseTo(coefficient, 7);
      expect(n(row['Standard error'])).toBeCloseTo(se[i]!, 7);
      expect(n(row.Low)).toBeCloseTo(coefficient - t * se[i]!, 7);
      expect(n(row.High)).toBeCloseTo(coefficient + t * se[i]!, 7);
    });
    expect(n(rows[4]!.Value)).toBe(count);
    expect(n(rows[5]!.Value)).toBeCloseTo(r2, 9);
    expect(n(rows[6]!.Value)).toBeCloseTo(see, 9);
  },
  report: async (page) => {
    const text = await page.getByRole('dialog', { name: 'Cohort report' }).textContent();
    for (const all of Object.values(designs)) expect(text).toContain(reliability(all).agreement.toFixed(2));
    for (const source of ['Shrout', 'McGraw', 'Bland']) expect(text).toContain(source);
  },
  csv: async (page) => {
    for (const [name, label] of [
      ['trials', 'Trials'],
      ['people', 'People'],
      ['reliability', 'Reliability'],
      ['groups', 'By sex'],
      ['regression', 'Regression'],
    ] as const) {
      await contents(page, label).click();
      await open(page, label);
      texts.set(name, (await saved(page)).text);
    }
  },
  script: async () => {
    const out = runLines('script');
    expect(texts.size).toBe(5);
    // Byte for byte.
    for (const [name, text] of texts) expect(readFileSync(join(out, `${name}.csv`), 'utf8')).toBe(text);
  },
  'report-script': async () => {
    const report = readFileSync(join(runLines('report-script'), 'report.html'), 'utf8');
    for (const all of Object.values(designs)) expect(report).toContain(reliability(all).agreement.toFixed(2));
  },
};

/** Runs the lines of a step as they stand there, but for the folder they write to; answers that folder. */
function runLines(step: string): string {
  const { lines = [] } = stepsOf(researcherJourney.guide).find(({ id }) => id === step)!;
  const words = lines.join(' ').replaceAll('\\', ' ').split(/\s+/);
  expect(words.slice(0, 2)).toEqual(['npx', 'leverbook']);
  const out = folder();
  const { code, err } = leverbook([...words.slice(2, -1), out]);
  expect(code, err).toBe(0);
  return out;
}

test('every step of the guide is done here, and nothing else', () => {
  expect(missingSteps(researcherJourney)).toEqual([]);
  expect(Object.keys(checks).filter((id) => !(id in researcherJourney.does))).toEqual([]);
});

describe('the guide for the researcher', () => {
  test.each(stepsOf(researcherJourney.guide))('$id: $text', async ({ id }) => {
    const { page, faults } = watched;
    await researcherJourney.does[id]!(page, async () => {});
    await checks[id]?.(page);
    expect(faults).toEqual([]);
  });
});
