import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { theilSen } from '../../../functions/statistics/theil-sen.ts';

/** The median of all pairwise slopes, by writing them all down. */
function naive(x: readonly number[], y: readonly number[]): number {
  const slopes: number[] = [];
  for (let i = 0; i < x.length; i++)
    for (let j = 0; j < i; j++) if (x[i] !== x[j]) slopes.push((y[i]! - y[j]!) / (x[i]! - x[j]!));
  const sorted = Float64Array.from(slopes).sort();
  const half = sorted.length >> 1;
  return sorted.length % 2 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

describe('theilSen(x, y)', () => {
  test('is the median of all pairwise slopes, pairs of one x left out', () => {
    const points = fc.array(fc.tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: -50, max: 50 })), {
      minLength: 2,
      maxLength: 40,
    });
    fc.assert(
      fc.property(points, (list) => {
        const [x, y] = [list.map(([v]) => v), list.map(([, v]) => v)];
        fc.pre(new Set(x).size > 1);
        expect(theilSen(Float64Array.from(x), Float64Array.from(y))).toBeCloseTo(naive(x, y), 12);
      }),
    );
  });

  test('finds the same median in a long series, where it counts slopes instead of listing them', () => {
    for (const seed of [3, 11]) {
      let state = seed;
      const random = () => {
        state = (state * 48271) % 2147483647;
        return state / 2147483647;
      };
      const x = Array.from({ length: 2600 }, () => 46000 + Math.floor(random() * 900));
      const y = x.map((day) => 100 + (day - 46000) / 30 + Math.round(random() * 40) / 2);
      expect(theilSen(Float64Array.from(x), Float64Array.from(y))).toBeCloseTo(naive(x, y), 11);
    }
  });

  test('is exactly 0 for a long flat series', () => {
    const x = Float64Array.from({ length: 2600 }, (_, i) => i);
    expect(
      theilSen(
        x,
        x.map((_, i) => 50 + (i % 2)),
      ),
    ).toBe(0);
  });

  test('has no value for one x', () => {
    expect(theilSen(Float64Array.of(1, 1), Float64Array.of(2, 3))).toBeNaN();
  });
});
