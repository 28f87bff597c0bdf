import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { stepsOf } from '../../src/guides/index.ts';
import { ankleFromWall, leanOf } from '../session/posture.ts';
import { withoutFileAccess } from './browser.ts';
import { inBrowser } from './in-browser.ts';
import { mean, n, sd, slopeAWeek, sum } from './journeys/figures.ts';
import { missingSteps, open, rowsOf, sampleFile, saved } from './journeys/journey.ts';
import { lifterJourney } from './journeys/lifter.ts';

/**
 * The guide for the lifter, step by step in a real browser. What the numbers should be is worked out here from the file
 * itself: a pound is .45359237 kg (international yard and pound agreement 1959), the maximum from a set 1 + n/30 (Epley
 * 1985; repetitions in reserve from the rating by Zourdos 2016, J Strength Cond Res 30:267–275), session load and monotony
 * (Foster 1998, Med Sci Sports Exerc 30:1164–1168), the trend by least squares, the lean by the bar rule in closed form.
 */
const watched = inBrowser({ viewport: { width: 3500, height: 1100 }, first: withoutFileAccess });

const pound = 0.45359237;
const rows = rowsOf(readFileSync(sampleFile('two-years-of-squats', 'training-export.csv'), 'utf8')).map(
  (row) => {
    const [month, day, year] = row.Date!.split('/').map(Number);
    const load = row.Load === 'empty bar' ? 45 * pound : n(row.Load) * pound;
    const [sets, reps] = [n(row.Sets), n(row.Reps)];
    const rpe = row.RPE === '' ? null : n(row.RPE);
    const whole = rpe === null ? 0 : reps + 10 - rpe;
    const counts = row.Exercise === 'Squat' && rpe !== null && rpe >= 7 && reps <= 10;
    return {
      on: Date.UTC(year!, month! - 1, day!) / 86_400_000,
      squat: row.Exercise === 'Squat',
      sets,
      reps,
      load,
      volume: sets * reps * load,
      max: !counts ? null : whole === 1 ? load : load * (1 + whole / 30),
      sessionLoad: row.Minutes === '' ? null : n(row['Session RPE']) * n(row.Minutes),
    };
  },
);
const estimates = rows.flatMap(({ on, max }) => (max === null ? [] : [{ on, value: max }]));
const last = Math.max(...rows.map(({ on }) => on));
const since = (days: number) => estimates.filter(({ on }) => on > last - days);
/** 2023-10-02, the day the file begins with, is a Monday. */
const monday = Date.UTC(2023, 9, 2) / 86_400_000;

const build = { femur: 86 - 47, tibia: 47 - 6.5, trunk: 130.5 - 86, foot: 24.5 };
const own = { ...build, ankle: ankleFromWall(9, build.tibia, build.foot) };
const heights = [0, 0.6, 1.3, 1.9, 2.5, 3];
/** Of the heights typed: the next below the one that reaches 32°, where it misses by less than the error; else that one. */
function heelFor(error: number): number {
  const reaching = heights.findIndex((height) => leanOf(own, height)! <= 32);
  const below = heights[reaching - 1]!;
  return leanOf(own, below)! <= 32 + error ? below : heights[reaching]!;
}

const checks: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  mend: async (page) => {
    const { rows: kept } = await saved(page);
    expect(kept).toHaveLength(rows.length);
    kept.forEach((row, i) => {
      expect(n(row.Load)).toBeCloseTo(rows[i]!.load, 9);
      expect(Date.parse(`${row.Day}T00:00:00Z`) / 86_400_000).toBe(rows[i]!.on);
      if (rows[i]!.max === null) expect(row['Estimated 1RM']).toBe('');
      else expect(n(row['Estimated 1RM'])).toBeCloseTo(rows[i]!.max!, 9);
    });
  },
  glance: async (page) => {
    const { rows: lines } = await saved(page);
    const value = (what: string) => n(lines.find((line) => line.What === what)?.Value);
    const best = Math.max(...estimates.map((one) => one.value));
    expect(value('Sessions')).toBe(rows.filter(({ sessionLoad }) => sessionLoad !== null).length);
    expect(value('Best estimated 1RM')).toBeCloseTo(best, 9);
    expect(value('Best of the last 8 weeks')).toBeCloseTo(Math.max(...since(56).map((one) => one.value)), 9);
    expect(value('Change per week over the last 12 weeks')).toBeCloseTo(slopeAWeek(since(84)), 9);
    expect(value('Change per week over the whole log')).toBeCloseTo(slopeAWeek(estimates), 9);
    const singles = rows.filter(({ squat, reps }) => squat && reps === 1).map(({ load }) => load);
    expect(value('Heaviest single')).toBeCloseTo(Math.max(...singles), 9);
    // Monday 2023-10-02 to Sunday 2025-09-28: 104 weeks.
    expect(value('Weeks in the log')).toBe(104);
  },
  best: async (page) => {
    const { rows: lines } = await saved(page);
    for (const line of lines) {
      const done = rows.filter(({ squat, reps }) => squat && reps === n(line.Repetitions));
      const heaviest = Math.max(...done.map(({ load }) => load));
      const first = Math.min(...done.filter(({ load }) => load === heaviest).map(({ on }) => on));
      if (done.length === 0) expect(line.Heaviest).toBe('');
      else {
        expect(n(line.Heaviest)).toBeCloseTo(heaviest, 9);
        expect(Date.parse(`${line['First done on']}T00:00:00Z`) / 86_400_000).toBe(first);
      }
    }
  },
  weeks: async (page) => {
    await open(page, 'Weeks');
    const { rows: lines } = await saved(page);
    for (let week = 0; week < 104; week++) {
      const from = monday + 7 * week;
      const inIt = rows.filter(({ on }) => on >= from && on < from + 7);
      const days = Array.from({ length: 7 }, (_, i) =>
        sum(inIt.filter(({ on }) => on === from + i).map(({ sessionLoad }) => sessionLoad ?? 0)),
      );
      const line = lines[week]!;
      expect(n(line.Sets)).toBe(sum(inIt.map(({ sets }) => sets)));
      expect(n(line.Volume)).toBeCloseTo(sum(inIt.map(({ volume }) => volume)), 6);
      expect(n(line.Load)).toBe(sum(days));
      if (sum(days) > 0) expect(n(line.Monotony)).toBeCloseTo(mean(days) / sd(days), 9);
    }
    expect(lines[104]!.Load).toBe('');
  },
  lean: async (page) => {
    const [line] = (await saved(page)).rows;
    expect(n(line!.Femur)).toBeCloseTo(build.femur, 9);
    expect(line!.Lengths).toBe('ok');
    expect(n(line!['Ankle range used'])).toBeCloseTo(own.ankle, 9);
    expect(n(line!['Minimum lean (model)'])).toBeCloseTo(leanOf(own)!, 9);
    const heel = heelFor(n(line!['± error']));
    expect(n(line!['Heel lift used'])).toBe(heel);
    expect(n(line!['Minimum lean with heel lift'])).toBeCloseTo(leanOf(own, heel)!, 9);
  },
  figure: async (page) => {
    const lifted = page.locator('.figure-numbers .main-row td');
    expect(await lifted.nth(0).textContent()).toContain(`${Math.round(leanOf(own)!)}°`);
    expect(await lifted.nth(1).textContent()).toContain(`${Math.round(leanOf(own, 1.9)!)}°`);
  },
  page: async (page) => {
    const text = await page.locator('.handout-pages article').textContent();
    expect(text).toContain('Two years on');
    expect(text).toContain('Try up to ');
    for (const caution of ['licensed clinician', 'safety pins', 'not for diagnosis'])
      expect(text).toContain(caution);
  },
};

test('every step of the guide is done here, and nothing else', () => {
  expect(missingSteps(lifterJourney)).toEqual([]);
  expect(Object.keys(checks).filter((id) => !(id in lifterJourney.does))).toEqual([]);
});

describe('the guide for the lifter', () => {
  test.each(stepsOf(lifterJourney.guide))('$id: $text', async ({ id }) => {
    const { page, faults } = watched;
    await lifterJourney.does[id]!(page, async () => {});
    await checks[id]?.(page);
    expect(faults).toEqual([]);
  });
});
