import { describe, expect, test } from 'vitest';
import * as arc from '../../../../functions/core/elementary/arc.ts';
import * as circle from '../../../../functions/core/elementary/circle.ts';
import { exp } from '../../../../functions/core/elementary/exp.ts';
import { expm1, tanh } from '../../../../functions/core/elementary/expm1.ts';
import * as hyperbolic from '../../../../functions/core/elementary/hyperbolic.ts';
import { hypot } from '../../../../functions/core/elementary/hypot.ts';
import { log, log2, log10 } from '../../../../functions/core/elementary/log.ts';
import { atanh, log1p } from '../../../../functions/core/elementary/log1p.ts';
import { pow } from '../../../../functions/core/elementary/pow.ts';
import values from './values.json' with { type: 'json' };

type Elementary = (...args: number[]) => number;
const own: Record<string, Elementary> = {
  ...{ exp, log, log10, log2, log1p, expm1, tanh, atanh, pow, hypot },
  ...arc,
  ...circle,
  ...hyperbolic,
};
/** Functions made of two others that are each within the last place. */
const ofTwo = ['tanh', 'hypot', 'atanh', 'sinh', 'cosh', 'asinh', 'acosh', 'log2'];

/** Distance of two numbers in steps of the last place. */
function steps(a: number, b: number): number {
  const bits = new BigInt64Array(new Float64Array([a, b]).buffer);
  const [x, y] = [bits[0]!, bits[1]!];
  return Number(x > y ? x - y : y - x);
}

describe('elementary functions', () => {
  // values.py beside this file: 400-digit arithmetic, rounded once
  test.each(Object.entries(values))(
    '%s is within the last place of 400-digit values (those made of two others: two)',
    (name, rows) => {
      const allowed = ofTwo.includes(name) ? 2 : 1;
      const off = (rows as [number[], number][]).filter(
        ([given, value]) => steps(own[name]!(...given), value) > allowed,
      );
      expect(rows.length).toBe(200);
      expect(off).toEqual([]);
    },
  );

  // ECMAScript, section 21.3.2, asks for the same of its own functions.
  const odd = [0, -0, 1, -1, 0.5, -0.5, 2, -2, 3, -3, 5e-324, 1e308, -1e308, Infinity, -Infinity, NaN];
  test.each([
    ...(['exp', 'log', 'log10', 'log2', 'log1p', 'expm1', 'tanh', 'atanh', 'asin', 'acos', 'atan'] as const),
    ...(['sin', 'cos', 'tan', 'sinh', 'cosh', 'asinh', 'acosh'] as const),
  ])('%s treats zeros, infinities and what it has no value for as the language does', (name) => {
    for (const x of odd) {
      const value = own[name]!(x);
      const language = Math[name](x);
      expect(
        Object.is(value, language) || Math.abs(value - language) <= 4e-16 * Math.abs(language),
        `${x}`,
      ).toBe(true);
    }
  });
  test('whole powers of two and ten are the doubles nearest to them, and logarithms of powers to their base are whole', () => {
    for (let k = -15; k <= 22; k++) expect(pow(10, k)).toBe(Number(`1e${k}`));
    for (let k = -22; k <= 22; k++) expect(log10(Number(`1e${k}`))).toBe(k);
    for (let k = -1074; k <= 1023; k++) {
      expect(pow(2, k)).toBe(2 ** k);
      expect(log2(2 ** k)).toBe(k);
    }
  });
  test.each(['pow', 'atan2', 'hypot'] as const)('%s does so for every pair of these', (name) => {
    for (const x of odd) {
      for (const y of odd) {
        const value = own[name]!(x, y);
        const language = Math[name](x, y);
        expect(
          Object.is(value, language) || Math.abs(value - language) <= 4e-16 * Math.abs(language),
          `${x}, ${y}`,
        ).toBe(true);
      }
    }
  });
});
