import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { stepsOf } from '../../src/guides/index.ts';
import { ankleFromWall, leanOf } from '../session/posture.ts';
import { withoutFileAccess } from './browser.ts';
import { inBrowser } from './in-browser.ts';
import { coachJourney } from './journeys/coach.ts';
import { mean, n, sd, slopeAWeek, sum } from './journeys/figures.ts';
import { missingSteps, open, type Row, rowsOf, sampleFile, saved } from './journeys/journey.ts';

/**
 * The guide for the coach, step by step in a real browser. What the numbers should be is worked out here from the files
 * themselves: the bar rule in closed form (tests/session/posture.ts), the minimal detectable change z · √2 · SEM (Weir
 * 2005, J Strength Cond Res 19:231–240), session load and monotony (Foster 1998, Med Sci Sports Exerc 30:1164–1168), the
 * maximum from a set (Epley 1985, 1 + n/30, with repetitions in reserve from the rating by Zourdos 2016, J Strength Cond
 * Res 30:267–275), the trend by least squares.
 */
const watched = inBrowser({ viewport: { width: 3500, height: 1100 }, first: withoutFileAccess });

const file = (name: string): string => readFileSync(sampleFile('squat-screening', name), 'utf8');
/** The roster without its title and its line of units, the two cells mended as the guide says. */
const roster: readonly Row[] = rowsOf(file('roster.csv').split('\n').slice(1).join('\n'))
  .slice(1)
  .map((row) => ({
    ...row,
    ...(row['Knee to wall right'] === 'stiff' ? { 'Knee to wall right': '6.5' } : {}),
  }));
const retest: readonly Row[] = rowsOf(file('retest.csv')).map((row) => ({
  ...row,
  Athlete:
    ({ 'Carla Nise': 'Carla Nisse', 'Adeyo, Jonas': 'Jonas Adeyo' } as Row)[row.Athlete!] ?? row.Athlete!,
}));

const build = (row: Row) => {
  const [femur, tibia, trunk, foot] = [n(row.Femur), n(row.Tibia), n(row.Trunk), n(row.Foot)];
  const side = (which: string) => ankleFromWall(n(row[`Knee to wall ${which}`]), tibia, foot);
  return { femur, tibia, trunk, foot, ankle: Math.min(side('left'), side('right')) };
};
const heights = [0, 0.6, 1.3, 1.9, 2.5, 3];
/** The target that the guide types. */
const target = 32;
/** The heel lift used: none within the error of the target; the next lower height where it misses by less than that. */
function liftFor(row: Row, error: number): number | 'none needed' {
  const lean = (height: number) => leanOf(build(row), height)!;
  if (lean(0) <= target + error) return 'none needed';
  const reaching = heights.find((height) => lean(height) <= target);
  const below = heights.filter((height) => height < (reaching ?? 99)).at(-1)!;
  return lean(below) <= target + error ? below : (reaching ?? 3);
}
const used = (row: Row) =>
  row['Heel lift used'] === 'none needed' ? 'none needed' : n(row['Heel lift used']);
/** 97.5 % quantile of the normal distribution (NIST/SEMATECH e-Handbook, 1.3.6.7.1). */
const mdc = 1.959963984540054 * Math.SQRT2 * (1.9 / (1.959963984540054 * Math.SQRT2));

interface Session {
  readonly athlete: string;
  readonly day: number;
  readonly load: number | null;
  readonly max: number | null;
}
const dayOf = (text: string): number => {
  const [day, month, year] = text.split('.').map(Number);
  return Date.UTC(year!, month! - 1, day!) / 86_400_000;
};
const sessions: readonly Session[] = rowsOf(file('training-log.csv'), ';').map((row) => {
  const minutes = row.Minutes === 'half' ? Number.NaN : n(row.Minutes);
  const [load, reps, rpe] = [n(row['Top set load']), n(row['Top set reps']), n(row['Top set RPE'])];
  const left = 10 - rpe;
  const single = reps + left === 1;
  return {
    athlete: row.Athlete === 'Kaia Lindquist' ? 'Kaia Lindqvist' : row.Athlete!,
    day: dayOf(row.Day!),
    load: Number.isNaN(minutes) ? null : n(row['Session RPE']) * minutes,
    max: row['Top set load'] === '' || rpe < 7 ? null : single ? load : load * (1 + (reps + left) / 30),
  };
});
const weekEnd = dayOf('09.11.2025');
const of = (athlete: string) => sessions.filter((session) => session.athlete === athlete);
function loadIn(athlete: string, end: number): readonly number[] {
  return Array.from({ length: 7 }, (_, i) =>
    of(athlete)
      .filter(({ day }) => day === end - i)
      .reduce((sum, { load }) => sum + (load ?? 0), 0),
  );
}
const trend = (athlete: string): number =>
  slopeAWeek(
    of(athlete).flatMap(({ day, max }) =>
      max !== null && day > weekEnd - 56 && day <= weekEnd ? [{ on: day, value: max }] : [],
    ),
  );

/** What can be seen once a step is done. */
const checks: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  roster: async (page) => {
    expect(await page.locator('.status').textContent()).toContain('24 rows');
  },
  mend: async (page) => {
    await open(page, 'Roster');
    const { rows } = await saved(page);
    expect(rows.map((row) => row.Athlete)).toEqual(roster.map((row) => row.Athlete));
    expect(rows.map((row) => row.Sex)).toEqual(roster.map((row) => (row.Sex === 'F' ? 'female' : 'male')));
    rows.forEach((row, i) => {
      expect(n(row['Minimum lean (model)'])).toBeCloseTo(leanOf(build(roster[i]!))!, 9);
      expect(n(row['Body mass'])).toBe(n(roster[i]!['Body mass']));
    });
  },
  lean: async (page) => {
    const { rows } = await saved(page);
    rows.forEach((row, i) => {
      // Together the parts are the difference from the lifter of average build with an ankle range of 38°.
      const own = build(roster[i]!);
      const whole = own.femur + own.tibia + own.trunk;
      const average = { femur: 0.2987 * whole, tibia: 0.3114 * whole, trunk: 0.3899 * whole };
      const reference = leanOf({ ...average, ankle: 38, foot: own.foot })!;
      const parts = n(row['Lean from build']) + n(row['Lean from ankle']);
      expect(parts).toBeCloseTo(leanOf(own)! - reference, 9);
      // No target yet: no heel lift is spoken of.
      expect([row['Heel lift needed'], row['Heel lift used']]).toEqual(['', '']);
    });
    expect(await page.locator('.working h3').first().textContent()).toBe('Minimum lean (model), row 20');
  },
  lift: async (page) => {
    const { rows } = await saved(page);
    expect(rows.map(used)).toEqual(rows.map((row, i) => liftFor(roster[i]!, n(row['± error']))));
  },
  figure: async (page) => {
    const flat = Math.round(leanOf(build(roster[19]!))!);
    expect(await page.locator('.drawing').getAttribute('aria-label')).toContain(
      `Una Bellamy, to scale. On the flat: lean ${flat} `,
    );
  },
  group: async (page) => {
    const { rows } = await saved(page);
    // Errors of the lean are between 1.8° and 2.7°: who is beyond the largest is above, who is within the smallest is not.
    const beyond = (by: number) => roster.filter((row) => leanOf(build(row))! > target + by).length;
    expect(n(rows[2]!['Above target'])).toBeGreaterThanOrEqual(beyond(2.8));
    expect(n(rows[2]!['Above target'])).toBeLessThanOrEqual(beyond(1.7));
  },
  handouts: async (page) => {
    const pages = page.locator('.handout-pages article');
    expect(await pages.count()).toBe(24);
    const una = await pages.nth(19).textContent();
    expect(una).toContain('Una Bellamy');
    expect(una).toContain('Contact: Your coach, Tuesdays at the rack');
    expect(una).toContain('Try up to ');
    expect(una).toContain('licensed clinician');
  },
  retest: async (page) => {
    const { rows } = await saved(page);
    expect(rows.map((row) => row.Athlete)).toEqual(retest.map((row) => row.Athlete));
  },
  changed: async (page) => {
    await open(page, 'Retest');
    const { rows } = await saved(page);
    const ups = { left: 0, right: 0 };
    rows.forEach((row, i) => {
      const before = roster.find(({ Athlete }) => Athlete === retest[i]!.Athlete)!;
      for (const [side, heading] of [
        ['left', 'Left: real change?'],
        ['right', 'Right: real change?'],
      ] as const) {
        const now = retest[i]![`Knee to wall ${side}`]!;
        const change = n(now) - n(before[`Knee to wall ${side}`]);
        const verdict = now === 'ill' ? '' : change > mdc ? 'up' : change < -mdc ? 'down' : 'within error';
        expect(row[heading], `${row.Athlete}, ${side}`).toBe(verdict);
        if (verdict === 'up') ups[side]++;
      }
    });
    expect(ups.left).toBeGreaterThan(3);
    await open(page, 'Summary');
    const [, , all] = (await saved(page)).rows;
    expect(n(all!['Left: real increase'])).toBe(ups.left);
    expect(n(all!['Right: real increase'])).toBe(ups.right);
    expect(n(all!['MDC 95 %'])).toBeCloseTo(mdc, 1);
  },
  pairs: async (page) => {
    // 22 pairs: the lifter who was ill has none.
    expect(await page.locator('.chart-place').textContent()).toContain('1 of 23 rows');
  },
  monitoring: async (page) => {
    const { rows } = await saved(page);
    roster.forEach(({ Athlete, 'Body mass': mass }, i) => {
      const row = rows[i]!;
      const days = loadIn(Athlete!, weekEnd);
      const best = Math.max(
        ...of(Athlete!).flatMap(({ day, max }) =>
          max !== null && day > weekEnd - 56 && day <= weekEnd ? [max] : [],
        ),
      );
      expect(row.Athlete).toBe(Athlete);
      expect(n(row['Sessions logged'])).toBe(of(Athlete!).length);
      expect(n(row['Load this week'])).toBe(sum(days));
      expect(n(row['Load the week before'])).toBe(sum(loadIn(Athlete!, weekEnd - 7)));
      expect(n(row.Monotony)).toBeCloseTo(mean(days) / sd(days), 9);
      expect(n(row.Strain)).toBeCloseTo((sum(days) * mean(days)) / sd(days), 6);
      expect(n(row['Best estimated 1RM'])).toBeCloseTo(best, 9);
      expect(n(row['× body mass'])).toBeCloseTo(best / n(mass), 9);
      expect(n(row['1RM trend'])).toBeCloseTo(trend(Athlete!), 9);
    });
  },
  week: async (page) => {
    const { rows } = await saved(page);
    const closedWeek = dayOf('26.10.2025');
    const loads = roster.map(({ Athlete }) => sum(loadIn(Athlete!, closedWeek)));
    expect(rows.slice(0, 24).map((row) => n(row['Load this week']))).toEqual(loads);
    expect(sum(loads)).toBe(0);
  },
};

test('every step of the guide is done here, and nothing else', () => {
  expect(missingSteps(coachJourney)).toEqual([]);
  expect(Object.keys(checks).filter((id) => !(id in coachJourney.does))).toEqual([]);
});

describe('the guide for the coach', () => {
  test.each(stepsOf(coachJourney.guide))('$id: $text', async ({ id }) => {
    const { page, faults } = watched;
    await coachJourney.does[id]!(page, async () => {});
    await checks[id]?.(page);
    expect(faults).toEqual([]);
  });
});
