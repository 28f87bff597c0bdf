import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Figure } from '../../src/session/api.ts';
import { reasonsOf } from '../../src/session/figure/drawing/explained-drawing.ts';
import { shapeText } from '../../src/session/figure/drawing/svg-shape.ts';
import { wholeDegrees } from '../../src/session/figure/explained.ts';
import { fractionInWords } from '../../src/session/figure/explained-words.ts';
import { handoutShapes } from '../../src/session/handouts/handout-document.ts';
import { handoutsOf } from '../../src/session/handouts/handouts.ts';
import { observedBook } from './observed-book.ts';
import { type Build, leanOf } from './posture.ts';

const build: Build = { femur: 44, tibia: 39, trunk: 50, ankle: 36, foot: 26 };
/** Published shares of femur, tibia and trunk in their sum: ANSUR II, mean of the sexes (Gordon et al. 2014, NATICK/TR-15/007). */
const shares = [0.2987, 0.3114, 0.3899] as const;

const book = (squats: readonly (readonly string[])[]) =>
  observedBook(squats.map((squat) => ['Ada', ...squat]));
const part = (of: Figure, name: string) => of.explained!.parts.find((one) => one.part === name)!;

describe('an observed lean taken apart', () => {
  test('has the parts of the closed form, and they add up to it', () => {
    const figure = book([['2025-09-01', '48', '27', '5']]).figure('squats', 0);
    const sum = build.femur + build.tibia + build.trunk;
    const [femur, tibia, trunk] = shares.map((share) => share * sum) as [number, number, number];
    const reference = leanOf({ ...build, femur, tibia, trunk, ankle: 38 }, 0, 5)!;
    const own = leanOf(build, 0, 5)!;
    const atShin = leanOf({ ...build, ankle: 27 }, 0, 5)!;
    expect(part(figure, 'reference').value).toBeCloseTo(reference, 1);
    expect(part(figure, 'use').value).toBeCloseTo(atShin - own, 9);
    expect(part(figure, 'balance').value).toBeCloseTo(48 - atShin, 9);
    const middle = ['femur', 'tibia', 'trunk', 'ankle'].reduce(
      (all, one) => all + part(figure, one).value,
      0,
    );
    expect(middle).toBeCloseTo(own - reference, 1);
    const { parts, lean, used } = figure.explained!;
    expect(parts.reduce((all, { value }) => all + value, 0)).toBeCloseTo(48, 9);
    expect(parts.reduce((all, { whole }) => all + whole, 0)).toBe(lean);
    expect(used).toBeCloseTo(27 / 36, 12);
    expect(part(figure, 'use').words).toBe('because a quarter of the ankle range is not used');
  });

  test('carries the errors of tape, ankle test and points; what is smaller is within error', () => {
    const figure = book([['2025-09-01', '48', '27', '5']]).figure('squats', 0);
    // balance = lean − lean at the shin: errors of lean and shin by placing both ends to 1 cm, and of femur, tibia, trunk, depth
    const slope = (of: Partial<Build>, by: Partial<Build>, step: number) =>
      (leanOf({ ...build, ankle: 27, ...by }, 0, 5)! - leanOf({ ...build, ankle: 27, ...of }, 0, 5)!) / step;
    const placed = (length: number) => (Math.atan(Math.SQRT2 / length) * 180) / Math.PI;
    const byDepth =
      (leanOf({ ...build, ankle: 27 }, 0, 5.01)! - leanOf({ ...build, ankle: 27 }, 0, 4.99)!) / 0.02;
    const expected = Math.hypot(
      placed(50),
      placed(39) * slope({ ankle: 26.99 }, { ankle: 27.01 }, 0.02),
      placed(44) * byDepth,
      slope({ femur: 43.99 }, { femur: 44.01 }, 0.02),
      slope({ tibia: 38.99 }, { tibia: 39.01 }, 0.02),
      slope({ trunk: 49.99 }, { trunk: 50.01 }, 0.02),
    );
    expect(part(figure, 'balance').error).toBeCloseTo(expected, 4);
    for (const { part: name, value, whole, error, within } of figure.explained!.parts)
      expect(within).toBe(name !== 'reference' && (whole === 0 || Math.abs(value) <= error));
    expect(reasonsOf(figure.explained!).at(-1)).toMatch(/^Within error: /);
  });

  test('is that of the row, else of the lifter’s latest squat in another sheet', () => {
    const session = book([
      ['2025-09-08', '44', '30', '2'],
      ['2025-09-01', '48', '27', '5'],
      ['', '', '', ''],
    ]);
    expect(session.figure('squats', 1).explained).toMatchObject({ row: 1, lean: 48 });
    expect(session.figure('roster', 0).explained).toMatchObject({ row: 0, lean: 44 });
    expect(session.figure('roster', 0).explained!.day).toContain('2025');
    expect(session.figure('squats', 2).explained).toBeNull();
  });

  test('says why it cannot be taken apart: a shin angle that no ankle has', () => {
    const { explained } = book([['2025-09-01', '48', '85', '5']]).figure('squats', 0);
    expect(explained!.parts).toEqual([]);
    expect(explained!.sentence).toMatch(/85/);
  });

  test('is in the working of the observed lean and on the handout', () => {
    const session = book([['2025-09-01', '48', '27', '5']]);
    const sheet = session.outline().sheets.find(({ name }) => name === 'squats')!;
    const column = sheet.columns.find(({ name }) => name === 'observed_lean')!.id;
    const working = session.working({ sheet: sheet.id, column, row: 0 });
    expect(working.explained!.parts).toHaveLength(7);
    expect(working.text).toContain('because a quarter of the ankle range is not used');
    const pages = handoutShapes(session.ask((context) => handoutsOf(context)));
    const page = pages.map(shapeText).join('');
    expect(page).toContain('where it comes from');
    expect(page).toContain('because a quarter of the ankle range is not used');
  });
});

test('Whole degrees of parts add up to the whole degrees of their sum, none more than a degree off', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -60, max: 60, noNaN: true }), { minLength: 1, maxLength: 9 }),
      (values) => {
        const whole = wholeDegrees(values);
        expect(whole.reduce((sum, value) => sum + value, 0)).toBe(
          Math.round(values.reduce((sum, value) => sum + value, 0)) + 0,
        );
        for (const [at, one] of whole.entries())
          expect(Math.abs(one - values[at]!)).toBeLessThanOrEqual(1 + 1e-9);
      },
    ),
  );
});

test('Shares are called by the fraction they are near', () => {
  expect(fractionInWords(0.25)).toBe('a quarter');
  expect(fractionInWords(0.29)).toBe('about a quarter');
  expect(fractionInWords(0.5)).toBe('half');
  expect(fractionInWords(1.3)).toBe('all');
});
