import { expect, test } from 'vitest';
import { cos, sin } from '../../../functions/posture/angle.ts';

/** The language's own, which every engine keeps to within about a unit of the last place. */
test('sine and cosine of degrees are those of the language, to two units of the last place of 1', () => {
  for (let degrees = -720; degrees <= 720; degrees += 0.37) {
    const radians = (degrees * Math.PI) / 180;
    // The rounding of the radians counts too, the more the further round they go.
    const near = 2 * Number.EPSILON * Math.max(1, Math.abs(radians));
    expect(Math.abs(sin(degrees) - Math.sin(radians))).toBeLessThanOrEqual(near);
    expect(Math.abs(cos(degrees) - Math.cos(radians))).toBeLessThanOrEqual(near);
  }
});

test('quarter turns are exact, and nothing comes of nothing', () => {
  expect([sin(0), sin(90), sin(180) + 0, sin(270), cos(0), cos(90) + 0, cos(180), cos(-90) + 0]).toEqual([
    0, 1, 0, -1, 1, 0, -1, 0,
  ]);
  expect(sin(Number.NaN)).toBeNaN();
  expect(cos(Number.POSITIVE_INFINITY)).toBeNaN();
});

/* Half a turn split in six: sin 30° = cos 60° = 1/2, tan 45° = 1 (Euclid). The digits are the same in every engine. */
test('known angles', () => {
  expect(sin(30)).toBeCloseTo(0.5, 15);
  expect(cos(60)).toBeCloseTo(0.5, 15);
  expect(sin(45)).toBeCloseTo(Math.SQRT1_2, 15);
  expect(cos(45)).toBeCloseTo(Math.SQRT1_2, 15);
});
