import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { invoke } from '../../../functions/core/invoke.ts';
import { isIssue } from '../../../functions/core/issue.ts';
import { columnRange } from '../../../functions/core/value.ts';
import { registry } from '../../../functions/registry.ts';
import { checks } from '../check.ts';

const call = (name: string, ...args: Parameters<typeof invoke>[1][number][]) =>
  invoke(registry.get(name)!, args) as number;
const methods = ['epley', 'brzycki', 'lander', 'lombardi', 'mayhew', 'oconner', 'wathan', 'mean'];

/** The equations once more, as the sources print them (secondary transcriptions). */
const printed: Record<string, (w: number, n: number) => number> = {
  epley: (w, n) => w + (w * n) / 30,
  brzycki: (w, n) => w / (37 / 36 - n / 36),
  lander: (w, n) => (100 * w) / (101.3 - 2.67123 * n),
  lombardi: (w, n) => w * Math.exp(0.1 * Math.log(n)),
  mayhew: (w, n) => (100 * w) / (52.2 + 41.9 * Math.E ** (-0.055 * n)),
  oconner: (w, n) => w + 0.025 * w * n,
  wathan: (w, n) => (100 * w) / (48.8 + 53.8 * Math.E ** (-0.075 * n)),
};
const close = (a: number, b: number, size = 1e-9) =>
  expect(Math.abs(a - b), `${a} against ${b}`).toBeLessThanOrEqual(size * Math.max(1, Math.abs(b)));

describe('STRENGTH.MAX, LOAD and REPS', () => {
  test.each(methods)(
    'MAX follows the printed equation of %s, and the load itself at one repetition',
    (method) => {
      fc.assert(
        fc.property(
          fc.double({ min: 1, max: 700, noNaN: true }),
          fc.integer({ min: 1, max: 36 }),
          (load, n) => {
            const each = Object.values(printed).map((f) => f(load, n));
            const expected =
              method === 'mean' ? each.reduce((a, b) => a + b, 0) / 7 : printed[method]!(load, n);
            close(call('STRENGTH.MAX', load, n, method), n === 1 ? load : expected);
          },
        ),
      );
    },
  );

  test.each(methods)('LOAD undoes MAX with %s, repetitions in reserve counted on both sides', (method) => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 120, noNaN: true }),
        fc.double({ min: 1, max: 20, noNaN: true }),
        fc.integer({ min: 0, max: 10 }),
        (load, reps, rir) => {
          const max = call('STRENGTH.MAX', load, reps, method, rir);
          close(call('STRENGTH.LOAD', max, reps, method, rir), load);
        },
      ),
    );
  });

  test.each(methods)('REPS undoes MAX with %s', (method) => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 19, noNaN: true }),
        fc.double({ min: 1.3, max: 36, noNaN: true }),
        (load, n) => {
          const max = call('STRENGTH.MAX', load, n, method);
          fc.pre(max > load && max <= 700);
          close(call('STRENGTH.REPS', max, load, method), n, 1e-7);
        },
      ),
    );
  });

  test('a set with reserve counts as a longer set to failure', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...methods),
        fc.integer({ min: 1, max: 20 }),
        fc.integer({ min: 0, max: 10 }),
        (method, reps, rir) => {
          close(call('STRENGTH.MAX', 100, reps, method, rir), call('STRENGTH.MAX', 100, reps + rir, method));
        },
      ),
    );
  });

  checks([
    ['STRENGTH.MAX(100, 30, "epley", 6)', 220],
    ['STRENGTH.MAX(100, 30, "epley", 7)', '#NUM!', 'rir'],
    ['STRENGTH.MAX(100, 5, "O\'Conner")', 112.5],
    ['STRENGTH.MAX(100, 5, "EPLEY ")', 350 / 3],
    ['STRENGTH.MAX(100, 5, "guess")', '#VALUE!', 'method'],
    ['STRENGTH.MAX(100, 0.5)', '#NUM!', 'reps'],
    ['STRENGTH.MAX(0, 5)', 0],
    ['STRENGTH.MAX(-1, 5)', '#NUM!', 'load'],
    ['STRENGTH.MAX(700.5, 5)', '#NUM!', 'load'],
    ['STRENGTH.MAX("five", 5)', '#VALUE!', 'load'],
    ['STRENGTH.MAX(" 1e2 ", 10)', 400 / 3],
    ['STRENGTH.REPS(100, 100.5)', 1],
    ['STRENGTH.REPS(100, 98)', 1],
    ['STRENGTH.REPS(0, 50)', '#DIV/0!', 'max'],
    ['STRENGTH.REPS(100, 0)', '#NUM!', 'load'],
    ['STRENGTH.REPS(100, 40)', '#NUM!', 'load'],
    ['STRENGTH.REPS(220, 100)', 36],
    ['STRENGTH.REPS(100, 50, "mayhew")', '#NUM!', 'load'],
    ['STRENGTH.REPS(100, 10, "mean")', '#NUM!', 'load'],
  ]);
});

describe('STRENGTH.RIR (Zourdos 2016)', () => {
  checks([
    ['STRENGTH.RIR(10)', 0],
    ['STRENGTH.RIR(9.5)', 0],
    ['STRENGTH.RIR(9)', 1],
    ['STRENGTH.RIR(7.5)', 2.5],
    ['STRENGTH.RIR(7)', 3],
    ['STRENGTH.RIR(6.5)', '#N/A', 'rpe'],
    ['STRENGTH.RIR(1)', '#N/A', 'rpe'],
    ['STRENGTH.RIR(0.5)', '#NUM!', 'rpe'],
    ['STRENGTH.RIR(10.5)', '#NUM!', 'rpe'],
    ['STRENGTH.RIR(8.3)', '#NUM!', 'rpe'],
    ['STRENGTH.RIR(6.2)', '#NUM!', 'rpe'],
  ]);
});

describe('STRENGTH.FROM.VELOCITY', () => {
  checks([
    ['STRENGTH.FROM.VELOCITY({100}, {0.5})', '#N/A', 'loads'],
    ['STRENGTH.FROM.VELOCITY({100;100}, {0.5;0.6})', '#N/A', 'loads'],
    ['STRENGTH.FROM.VELOCITY({100;120}, {0.5;0.5})', '#NUM!', 'velocities'],
    ['STRENGTH.FROM.VELOCITY({100;120}, {0.5;0.7})', '#NUM!', 'velocities'],
    ['STRENGTH.FROM.VELOCITY({100;120}, {0.5;0.3}, 3)', '#NUM!', 'threshold'],
    ['STRENGTH.FROM.VELOCITY({100;120;140}, {0.5;;0.3}, 0.2)', 160],
    ['STRENGTH.FROM.VELOCITY({100;120}, {0.5})', '#VALUE!', 'velocities'],
  ]);
});

describe('scores of federations', () => {
  // A clamp holds the score still beyond the limit of its table.
  checks([
    ['STRENGTH.VELOCITY.LOSS({0.8,0.6;"",0.4})', 50],
    ['STRENGTH.VELOCITY.LOSS({0.8;-0.1})', '#NUM!', 'velocities'],
    ['STRENGTH.VELOCITY.LOSS({0.8})', '#N/A', 'velocities'],
    ['STRENGTH.VELOCITY.LOSS({0;0})', '#DIV/0!', 'velocities'],
    ['STRENGTH.WILKS(2000.1, 100, "M")', '#NUM!', 'total'],
    ['STRENGTH.ALLOMETRIC(200, 90, -0.01)', '#NUM!', 'exponent'],
    ['STRENGTH.ALLOMETRIC(200, 90, 2.01)', '#NUM!', 'exponent'],
    ['STRENGTH.WILKS(500, 12, "M")', call('STRENGTH.WILKS', 500, 40, 'M')],
    ['STRENGTH.WILKS(500, 300, "M")', call('STRENGTH.WILKS', 500, 201.9, 'M')],
    ['STRENGTH.WILKS(500, 12, "F")', call('STRENGTH.WILKS', 500, 26.51, 'F')],
    ['STRENGTH.WILKS(500, 300, "F")', call('STRENGTH.WILKS', 500, 154.53, 'F')],
    ['STRENGTH.DOTS(500, 12, "f")', call('STRENGTH.DOTS', 500, 40, 'FEMALE')],
    ['STRENGTH.DOTS(500, 300, "f")', call('STRENGTH.DOTS', 500, 150, 'Female')],
    ['STRENGTH.IPFGL(300, 34.9, "F")', 0],
    ['STRENGTH.IPFGL(300, 35, "F") ', (100 * 300) / (610.32796 - 1045.59282 * Math.exp(-0.03048 * 35))],
    ['STRENGTH.SINCLAIR(390, 83.5, "M", 2001)', 390 * 10 ** (0.938573813 * Math.log10(83.5 / 157.141) ** 2)],
    ['STRENGTH.SINCLAIR(390, 157.141, "M", "2001")', 390],
    ['STRENGTH.SINCLAIR(390, 83.5, "M", "1997")', '#VALUE!', 'cycle'],
    ['STRENGTH.WILKS(500, 83, "child")', '#VALUE!', 'sex'],
    ['STRENGTH.WILKS(500, 83, TRUE)', '#VALUE!', 'sex'],
    ['STRENGTH.WILKS(500, 9.9, "M")', '#NUM!', 'mass'],
  ]);
});

describe('STRENGTH.LOADABLE', () => {
  const kilograms = fc.integer({ min: 1, max: 40 }).map((n) => n * 1.25);
  const pounds = fc.constantFrom(45, 35, 25, 10, 5, 2.5).map((lb) => lb * 0.45359237);
  const sets = fc.uniqueArray(fc.oneof(kilograms, pounds), { minLength: 1, maxLength: 3 });

  /** Every sum of up to 20 pairs, one after the other. */
  function everyWeight(bar: number, plates: readonly number[]): number[] {
    const weights: number[] = [];
    const hang = (i: number, left: number, sum: number): void => {
      if (i === plates.length) weights.push(bar + 2 * sum);
      else for (let n = 0; n <= left; n++) hang(i + 1, left - n, sum + n * plates[i]!);
    };
    hang(0, 20, 0);
    return weights.sort((a, b) => a - b);
  }

  test('agrees with trying every combination of pairs', () => {
    fc.assert(
      fc.property(
        sets,
        fc.integer({ min: 0, max: 1400 }),
        fc.constantFrom(0, 15, 20),
        (plates, halves, bar) => {
          const load = halves / 2;
          const weights = everyWeight(bar, plates);
          const down = weights.findLast((w) => w <= load + 2e-6);
          const up = weights.find((w) => w >= load - 2e-6);
          const nearest =
            down === undefined || (up !== undefined && up - load < load - down - 4e-6) ? (up ?? down) : down;
          const range = columnRange(...plates);
          for (const [mode, expected] of [
            ['down', down],
            ['up', up],
            ['nearest', nearest],
          ] as const) {
            const outcome = invoke(registry.get('STRENGTH.LOADABLE')!, [load, bar, range, mode]);
            if (expected === undefined) expect(isIssue(outcome) && outcome.code).toBe('#N/A');
            else close(outcome as number, expected, 1e-7);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  checks([
    ['STRENGTH.LOADABLE(101.25, 20, {1.25})', 70],
    ['STRENGTH.LOADABLE(101.25, 20, {5;1.25}, "up")', 102.5],
    ['STRENGTH.LOADABLE(101.25, 20, {1.25;20})', 100],
    ['STRENGTH.LOADABLE(10, 20, {1.25})', 20],
    ['STRENGTH.LOADABLE(10, 20, {1.25}, "up")', 20],
    ['STRENGTH.LOADABLE(10, 20, {1.25}, "down")', '#N/A', 'load'],
    ['STRENGTH.LOADABLE(71, 20, {1.25}, "up")', '#N/A', 'load'],
    ['STRENGTH.LOADABLE(71, 20, {0})', '#NUM!', 'plates'],
    ['STRENGTH.LOADABLE(71, 20, {10;-5})', '#NUM!', 'plates'],
    ['STRENGTH.LOADABLE(50, 20, {""})', 20],
    ['STRENGTH.LOADABLE(50, 20, {""}, "up")', '#N/A', 'load'],
  ]);

  test('refuses so many odd sizes that the sums cannot be listed, instead of hanging', () => {
    const odd = columnRange(...Array.from({ length: 40 }, (_, i) => 0.5 + Math.sqrt(i + 2)));
    expect(invoke(registry.get('STRENGTH.LOADABLE')!, [333, 20, odd])).toMatchObject({
      code: '#NUM!',
      reason: 'too-many-sums',
      parameter: 'plates',
    });
  });
});
