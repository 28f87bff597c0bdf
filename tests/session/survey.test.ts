import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { preparing } from '../../src/session/imports/prepare-import.ts';
import { Session } from '../../src/session/session.ts';

const file = (sex: string) => new URL(`../../../shared/data/ANSUR_II_${sex}_Public.csv`, import.meta.url);
const here = existsSync(file('MALE')) && existsSync(file('FEMALE'));
if (!here) console.warn('The survey files are not beside the project: their test is skipped.');

const text = readFileSync(
  new URL('../../sample-books/survey-lengths.leverbook.json', import.meta.url),
  'utf8',
);
const opened = (): Session => Session.open(text);
function importFile(session: Session, sheet: string, sex: string): void {
  const reading = preparing(session, {
    bytes: readFileSync(file(sex)),
    name: `${sex}.csv`,
    sheet,
    now: '2025-10-01T09:00:00Z',
  });
  let step = reading.next();
  while (!step.done) step = reading.next();
  expect(session.writePlanned(step.value).ok).toBe(true);
  for (const _ of session.recalculate());
}
const table = (session: Session, sheet: string): Map<string, Record<string, number>> =>
  new Map(
    [...session.records(sheet)].map(({ values }) => [
      Object.values(values)[0] as string,
      values as Record<string, number>,
    ]),
  );

describe('the survey book', () => {
  test('is written exactly as the program writes it, and shows no error before the rows are there', () => {
    const session = opened();
    expect(session.save()).toBe(text);
    expect(session.doubts()).toEqual([]);
  });

  test.skipIf(!here)('brings both files in by recipe and reproduces the survey', () => {
    const session = opened();
    const empty = session.save();
    importFile(session, 'men', 'MALE');
    importFile(session, 'women', 'FEMALE');
    const summary = table(session, 'summary');
    const relations = table(session, 'relations');

    // Gordon et al. 2014, NATICK/TR-15/007, public release: stature mm 1756.21 (68.55), n 4082; 1628.47 (64.20), n 1986;
    // sitting height / stature .5231 (.0135); .5262 (.0141).
    expect(summary.get('Stature, cm')).toMatchObject({ men_n: 4082, women_n: 1986 });
    const stature = summary.get('Stature, cm')!;
    expect(stature.men_mean! * 10).toBeCloseTo(1756.21, 2);
    expect(stature.men_sd! * 10).toBeCloseTo(68.55, 2);
    expect(stature.women_mean! * 10).toBeCloseTo(1628.47, 2);
    expect(stature.women_sd! * 10).toBeCloseTo(64.2, 2);
    const cormic = summary.get('Cormic index')!;
    expect(cormic.men_mean).toBeCloseTo(52.31, 2);
    expect(cormic.men_sd).toBeCloseTo(1.35, 2);
    expect(cormic.women_mean).toBeCloseTo(52.62, 2);
    expect(cormic.women_sd).toBeCloseTo(1.41, 2);
    // The same release, means of femur, tibia, trunk in mm.
    const means = ([name, men, women]: readonly [string, number, number]) => {
      expect(summary.get(name)!.men_mean! * 10).toBeCloseTo(men, 2);
      expect(summary.get(name)!.women_mean! * 10).toBeCloseTo(women, 2);
    };
    means(['Femur, cm', 409.27, 379.41]);
    means(['Tibia, cm', 418.75, 403.19]);
    means(['Trunk, cm', 539.81, 489.74]);

    // The first man of the file, read in it: stature 1776, sitting 928, trochanterion 919, epicondyle 500, malleolus 77 mm.
    const first = [...session.records('men')][0]!.values as Record<string, number>;
    expect(first.subject).toBe(10027);
    expect(first.femur).toBeCloseTo(41.9, 9);
    expect(first.tibia).toBeCloseTo(42.3, 9);
    expect(first.femur_tibia).toBeCloseTo(0.9905, 4);
    expect(first.cormic).toBeCloseTo(52.25, 2);

    // Computed from the public file by ordinary least squares: r of stature and sitting knee height .8911; tibia on
    // stature −98.125 + .29431 H, standard error 14.02 mm (men).
    expect(relations.get('Stature and sitting knee height, r')!.men_value).toBeCloseTo(0.8911, 4);
    expect(relations.get('Tibia on stature: intercept, cm')!.men_value! * 10).toBeCloseTo(-98.125, 3);
    expect(relations.get('Tibia on stature: slope')!.men_value).toBeCloseTo(0.29431, 5);
    expect(relations.get('Tibia on stature: standard error of estimate, cm')!.men_value! * 10).toBeCloseTo(
      14.02,
      2,
    );

    // One undo takes one file back.
    session.undo();
    session.undo();
    expect(session.save()).toBe(empty);
  });
});
