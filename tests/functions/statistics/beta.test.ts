import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { betaRatio, betaTails } from '../../../functions/statistics/beta.ts';

const shape = fc.double({ min: -4, max: 14, noNaN: true }).map(Math.exp);

describe('betaTails(x, y, a, b) and betaRatio(tail, size, a, b)', () => {
  test('have the closed forms of a = 1 and b = 1', () => {
    fc.assert(
      fc.property(shape, fc.double({ min: -8, max: 8, noNaN: true }), (a, s) => {
        const [x, y] = [1 / (1 + Math.exp(-s)), 1 / (1 + Math.exp(s))];
        // I_x(a, 1) = x^a and its mirror image; powers near 1 by way of logarithms.
        const expected = Math.exp(a * Math.log1p(-y));
        fc.pre(expected > 1e-280);
        expect(Math.abs(betaTails(x, y, a, 1).below / expected - 1)).toBeLessThan(1e-10);
        expect(Math.abs(betaTails(y, x, 1, a).above / expected - 1)).toBeLessThan(1e-10);
      }),
    );
  });

  test('the tails add up to 1, and change places when a and b do', () => {
    fc.assert(
      fc.property(shape, shape, fc.double({ min: -6, max: 6, noNaN: true }), (a, b, s) => {
        const [x, y] = [1 / (1 + Math.exp(-s)), 1 / (1 + Math.exp(s))];
        const { below, above } = betaTails(x, y, a, b);
        const turned = betaTails(y, x, b, a);
        expect(below + above).toBeCloseTo(1, 12);
        expect(turned.above).toBeCloseTo(below, 12);
      }),
    );
  });

  test('the ratio gives the tail that was asked for', () => {
    fc.assert(
      fc.property(shape, shape, fc.double({ min: 1e-6, max: 0.5, noNaN: true }), (a, b, size) => {
        for (const tail of ['below', 'above'] as const) {
          const ratio = betaRatio(tail, size, a, b);
          fc.pre(ratio > 1e-290 && ratio < 1e290);
          const found = betaTails(ratio / (1 + ratio), 1 / (1 + ratio), a, b)[tail];
          // Narrow distributions change by more than this between two neighbouring ratios.
          const grain = 4e-16 * Math.abs(betaTails(ratio / (1 + ratio), 1 / (1 + ratio), a, b).slope);
          expect(Math.abs(found - size)).toBeLessThanOrEqual(1e-10 * size + grain);
        }
      }),
    );
  });

  test('answer not-a-number at once where there is no answer', () => {
    for (const wrong of [Number.NaN, 0, -1, Number.POSITIVE_INFINITY]) {
      expect(betaRatio('below', 0.5, wrong, 2)).toBeNaN();
      expect(betaRatio('above', 0.5, 2, wrong)).toBeNaN();
    }
    expect(betaRatio('below', Number.NaN, 2, 2)).toBeNaN();
    expect(betaTails(Number.NaN, 0.5, 2, 2).below).toBeNaN();
    expect(betaTails(0.5, 0.5, Number.NaN, 2).above).toBeNaN();
  });
});
