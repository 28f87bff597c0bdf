import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { invoke } from '../../../functions/core/invoke.ts';
import { columnRange } from '../../../functions/core/value.ts';
import { registry } from '../../../functions/registry.ts';
import { checks } from '../check.ts';

describe('place in a group', () => {
  checks([
    ['COHORT.Z(3, {3})', '#N/A', 'range'],
    ['COHORT.Z(3, {""})', '#N/A', 'range'],
    ['COHORT.Z(3, {2;2;2})', '#DIV/0!', 'range'],
    // Equal values whose mean is not exact in binary still have no spread.
    ['COHORT.Z(3, {.1;.1;.1})', '#DIV/0!', 'range'],
    ['COHORT.T(3, {.1;.1;.1})', '#DIV/0!', 'range'],
    ['COHORT.T(3, {3})', '#N/A', 'range'],
    ['COHORT.PERCENTILE(3, {3})', 50],
    ['COHORT.PERCENTILE(2, {2;2;2})', 50],
    ['COHORT.PAIRED({1}, {2})', '#N/A', 'before'],
    ['COHORT.PAIRED({1;""}, {2;3}, "n")', 1],
    ['COHORT.PAIRED({0.1;0.2}, {0.2;0.3}, "t")', '#DIV/0!', 'after'],
    ['COHORT.PAIRED({1;2}, {3;4}, "high")', 2],
    // 30 in is 76.2 cm, and a conversion may leave the last digit off
    ['COHORT.PERCENTILE(76.2, {76.20000000000002;76.19999999999999;80;70})', 50],
    ['COHORT.PERCENTILE(1, {2;2;2})', 0],
    ['COHORT.PERCENTILE(1, {"";""})', '#N/A', 'range'],
    ['COHORT.TRIMMED({5})', 5],
    ['COHORT.TRIMMED({1;2;3}, .5)', '#NUM!', 'share'],
    ['COHORT.TRIMMED({1;2;3}, -.1)', '#NUM!', 'share'],
    ['COHORT.TRIMMED({1;2;9}, .49)', 2],
    // .1 of 30 is 3 values, though .1 · 30 may be a bit less in binary.
    ['COHORT.TRIMMED({1000*3;5*24;-1000*3}, .1)', 5],
    ['COHORT.TRIMMED({""})', '#N/A', 'range'],
    ['COHORT.MAD({7})', 0],
    ['COHORT.MAD({""})', '#N/A', 'range'],
  ]);
});

describe('two groups', () => {
  checks([
    ['COHORT.D({1}, {2;3})', '#N/A', 'a'],
    ['COHORT.D({1;2}, {3})', '#N/A', 'b'],
    ['COHORT.D({1;1}, {3;3})', '#DIV/0!', 'a'],
    ['COHORT.D({1;1}, {2;4})', 2],
    ['COHORT.G({1;1}, {3;3})', '#DIV/0!', 'a'],
    ['COHORT.G({1}, {3;4})', '#N/A', 'a'],
    ['COHORT.WELCH({1;1}, {3;3})', '#DIV/0!', 'a'],
    ['COHORT.WELCH({1}, {3;4})', '#N/A', 'a'],
    ['COHORT.WELCH({1;2}, {4})', '#N/A', 'b'],
    ['COHORT.WELCH({1;2}, {4;5}, "q")', '#VALUE!', 'what'],
    ['COHORT.WELCH({2;4}, {2;4}, "t")', 0],
    ['COHORT.WELCH({2;4}, {2;4})', 1],
    // t of 1 degree of freedom is a Cauchy variable: t(.975, 1) = tan(.475 π).
    ['COHORT.WELCH({5;5}, {1;3}, "high")', 3 + Math.tan(0.475 * Math.PI)],
  ]);

  test('D turns its sign when the groups change places, and WELCH too', () => {
    const group = fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 2, maxLength: 12 });
    fc.assert(
      fc.property(group, group, (a, b) => {
        fc.pre(new Set(a).size > 1 && new Set(b).size > 1);
        const ask = (name: string, x: number[], y: number[], ...rest: string[]) =>
          invoke(registry.get(name)!, [columnRange(...x), columnRange(...y), ...rest]) as number;
        expect(ask('COHORT.D', a, b)).toBeCloseTo(-ask('COHORT.D', b, a), 12);
        expect(ask('COHORT.WELCH', a, b, 't')).toBeCloseTo(-ask('COHORT.WELCH', b, a, 't'), 12);
        expect(ask('COHORT.WELCH', a, b, 'low')).toBeCloseTo(-ask('COHORT.WELCH', b, a, 'high'), 9);
        expect(Math.sign(ask('COHORT.D', a, b))).toBe(-Math.sign(ask('COHORT.WELCH', a, b, 't')) + 0);
      }),
    );
  });
});

describe('COHORT.R', () => {
  checks([
    ['COHORT.R({1;2}, {5;3})', -1],
    ['COHORT.R({1}, {5})', '#N/A', 'x'],
    ['COHORT.R({1;2}, {5;3}, "p")', '#N/A', 'x'],
    ['COHORT.R({1;2;3}, {5;4;3}, "p")', 0],
    ['COHORT.R({1;2;3}, {5;4;3}, "low")', '#N/A', 'x'],
    ['COHORT.R({1;2;3;4}, {5;4;3;2}, "low")', -1],
    ['COHORT.R({1;2;3;4}, {5;4;3;2}, "high")', -1],
    // A straight line in tenths, where r comes to 1 only but for rounding.
    ['COHORT.R({.1;.2;.3;.7}, {.3;.6;.9;2.1})', 1],
    ['COHORT.R({.1;.2;.3;.7}, {.3;.6;.9;2.1}, "p")', 0],
    ['COHORT.R({1;1;1}, {1;2;3})', '#DIV/0!', 'x'],
    ['COHORT.R({1;2;3}, {4;4;4})', '#DIV/0!', 'y'],
    ['COHORT.R({1;;3}, {4;5;}, "n")', 1],
    ['COHORT.R({"";""}, {4;5}, "n")', 0],
    ['COHORT.R({1;2;3;4}, {1;3;2;9}, "low", "spearman")', '#VALUE!', 'what'],
    ['COHORT.R({1;2;3;4}, {1;3;2;9}, "high", "Spearman")', '#VALUE!', 'what'],
    // Ranks 1 2.5 2.5 4 against 1 2 3 4: 4.5/√(4.5 · 5).
    ['COHORT.R({1;2;2;4}, {1;2;3;4}, "r", "spearman")', 4.5 / Math.sqrt(4.5 * 5)],
    ['COHORT.R({1;2;3}, {1;2})', '#VALUE!', 'y'],
  ]);
});

describe('COHORT.FIT', () => {
  checks([
    ['COHORT.FIT({1}, {2})', '#N/A', 'x'],
    ['COHORT.FIT({1;1}, {2;3})', '#DIV/0!', 'x'],
    ['COHORT.FIT({1;2}, {2;4}, "see")', '#N/A', 'x'],
    ['COHORT.FIT({1;2}, {2;4}, "low", 3)', '#N/A', 'x'],
    ['COHORT.FIT({1;2}, {2;4}, "predict", 3)', 6],
    ['COHORT.FIT({1;2;3}, {2;4;6}, "see")', 0],
    ['COHORT.FIT({1;2;3}, {4;4;4})', 0],
    ['COHORT.FIT({1;2;3}, {4;4;4}, "r2")', '#DIV/0!', 'y'],
    ['COHORT.FIT({1;2;3}, {2;4;7}, "high")', '#N/A', 'at'],
    ['COHORT.FIT({1;;3}, {2;4;6}, "n")', 2],
    ['COHORT.FIT({1;2;3}, {2;4;6}, "curve")', '#VALUE!', 'what'],
    ['COHORT.FIT({1;2;3}, {2;4;6}, "predict", "five")', '#VALUE!', 'at'],
    // Residuals ⅙, −⅓, ⅙ about slope 2.5: see = √(1/6); t(.975, 1) = tan(.475 π).
    ['COHORT.FIT({1;2;3}, {2;4;7}, "see")', Math.sqrt(1 / 6)],
    [
      'COHORT.FIT({1;2;3}, {2;4;7}, "high", 2)',
      13 / 3 + Math.tan(0.475 * Math.PI) * Math.sqrt(1 / 6) * Math.sqrt(4 / 3),
    ],
  ]);
});

describe('COHORT.REGRESS', () => {
  checks([
    ['COHORT.REGRESS({1;2}, {1,1;2,3})', '#N/A', 'y'],
    ['COHORT.REGRESS({1;2;4}, {1,1;2,3;5,4}, "see")', '#N/A', 'y'],
    ['COHORT.REGRESS({1;2;4}, {1,1;2,3;5,4}, "r2")', 1],
    ['COHORT.REGRESS({1;2;4;5}, {1,7;2,7;5,7;6,7})', '#NUM!', 'x_columns'],
    ['COHORT.REGRESS({1;2;4;5}, {1,2;2,4;5,10;6,12})', '#NUM!', 'x_columns'],
    // Not exact multiples in binary: .1 x + .2 y.
    ['COHORT.REGRESS({1;2;4;5;3}, {1,2,.5;2,7,1.6;5,1,.7;6,3,1.2;4,4,1.2})', '#NUM!', 'x_columns'],
    ['COHORT.REGRESS({1;2;3}, {1,1;2,3})', '#VALUE!', 'x_columns'],
    ['COHORT.REGRESS({4;4;4;4}, {1;2;3;5}, "r2")', '#DIV/0!', 'y'],
    ['COHORT.REGRESS({1;;3;4}, {1,1;2,3;3,2;,9})', '#N/A', 'y'],
    ['COHORT.REGRESS({2;4;6}, {1;2;3})@2', 2],
  ]);
});
