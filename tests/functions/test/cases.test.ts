import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { invoke } from '../../../functions/core/invoke.ts';
import { rangeOf, type Value } from '../../../functions/core/value.ts';
import { registry } from '../../../functions/registry.ts';
import { checks } from '../check.ts';
import { evaluate } from '../formula.ts';

const forms = ['1,1', '2,1', '3,1', '1,k', '2,k', '3,k'];

describe('TEST.ICC', () => {
  /** Analysis of variance by the computing formulas: totals of squares, one less the other. */
  function naive(rows: readonly (readonly number[])[], form: string): number {
    const n = rows.length;
    const k = rows[0]!.length;
    const all = rows.flat();
    const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0);
    const square = (list: readonly number[]) => sum(list.map((v) => v * v));
    const correction = sum(all) ** 2 / (n * k);
    const total = square(all) - correction;
    const subjects = square(rows.map(sum)) / k - correction;
    const trials = square(rows[0]!.map((_, j) => sum(rows.map((row) => row[j]!)))) / n - correction;
    const bms = subjects / (n - 1);
    const jms = trials / (k - 1);
    const ems = (total - subjects - trials) / ((n - 1) * (k - 1));
    const wms = (total - subjects) / (n * (k - 1));
    const by: Record<string, number> = {
      '1,1': (bms - wms) / (bms + (k - 1) * wms),
      '2,1': (bms - ems) / (bms + (k - 1) * ems + (k * (jms - ems)) / n),
      '3,1': (bms - ems) / (bms + (k - 1) * ems),
      '1,k': (bms - wms) / bms,
      '2,k': (bms - ems) / (bms + (jms - ems) / n),
      '3,k': (bms - ems) / bms,
    };
    return by[form]!;
  }
  const block = fc.tuple(fc.integer({ min: 2, max: 8 }), fc.integer({ min: 2, max: 5 })).chain(([n, k]) =>
    fc.array(fc.array(fc.integer({ min: 0, max: 60 }), { minLength: k, maxLength: k }), {
      minLength: n,
      maxLength: n,
    }),
  );
  const spread = (rows: readonly (readonly number[])[]) => {
    const means = rows.map((row) => row.reduce((a, b) => a + b, 0));
    return (
      new Set(means).size > 1 &&
      rows.some((row) => row.some((v, j) => v - row[0]! !== rows[0]![j]! - rows[0]![0]!))
    );
  };
  const ask = (name: string, rows: readonly (readonly Value[])[], ...args: (string | number)[]) =>
    invoke(registry.get(name)!, [rangeOf(rows.length, rows[0]!.length, rows.flat()), ...args]);

  test.each(forms)('form %s agrees with a naive analysis of variance', (form) => {
    fc.assert(
      fc.property(block, (rows) => {
        fc.pre(spread(rows));
        const expected = naive(rows, form);
        fc.pre(Math.abs(expected) < 1e4);
        const value = ask('TEST.ICC', rows, form) as number;
        expect(Math.abs(value - expected)).toBeLessThanOrEqual(1e-8 * Math.max(1, Math.abs(expected)));
      }),
    );
  });

  // The fractional degrees of freedom of forms 2 hang on the data and promise no such order; scipy checks those limits.
  test.each(forms.filter((form) => form[0] !== '2'))(
    'form %s lies between its limits, which part as the confidence grows',
    (form) => {
      fc.assert(
        fc.property(block, (rows) => {
          fc.pre(spread(rows));
          const value = ask('TEST.ICC', rows, form) as number;
          const limit = (side: string, confidence: number) =>
            ask(`TEST.ICC.${side}`, rows, form, confidence) as number;
          expect(limit('LOW', 0.95)).toBeLessThanOrEqual(value + 1e-9);
          expect(limit('HIGH', 0.95)).toBeGreaterThanOrEqual(value - 1e-9);
          expect(limit('LOW', 0.95)).toBeLessThanOrEqual(limit('LOW', 0.8) + 1e-9);
          expect(limit('HIGH', 0.95)).toBeGreaterThanOrEqual(limit('HIGH', 0.8) - 1e-9);
        }),
      );
    },
  );

  test('a row with a blank is left out', () => {
    const rows: Value[][] = [
      [9, 2],
      [6, 1],
      [8, 4],
      [7, 3],
    ];
    expect(ask('TEST.ICC', [...rows.slice(0, 2), [5, null], ...rows.slice(2)])).toBe(ask('TEST.ICC', rows));
  });

  checks([
    ...forms.flatMap((form) =>
      ['TEST.ICC', 'TEST.ICC.LOW', 'TEST.ICC.HIGH'].map(
        (name) => [`${name}({40,40;42,42;45,45}, "${form}")`, 1] as const,
      ),
    ),
    // A shift common to all: no error for forms 3, also where tenths do not add up in binary.
    ...['3,1', '3,k'].flatMap((form) =>
      ['TEST.ICC', 'TEST.ICC.LOW', 'TEST.ICC.HIGH'].map(
        (name) => [`${name}({40.1,40.2;42.3,42.4;45.6,45.7}, "${form}")`, 1] as const,
      ),
    ),
    ['TEST.ICC({40,40;40,40})', '#DIV/0!', 'range'],
    ['TEST.ICC({40,41;40,41}, "3,1")', '#DIV/0!', 'range'],
    ['TEST.ICC({1,3;3,1}, "1,1")', -1],
    // the same rows without 1e12 before them: BMS 15.167, EMS .6667, computed with centred sums of squares
    ...forms.map(
      (form) =>
        [
          `TEST.ICC({1000000000001,1000000000002;1000000000003,1000000000003;1000000000005,1000000000007;1000000000009,1000000000008}, "${form}")`,
          naive(
            [
              [1, 2],
              [3, 3],
              [5, 7],
              [9, 8],
            ],
            form,
          ),
        ] as const,
    ),
    ['TEST.ICC({40,41})', '#N/A', 'range'],
    ['TEST.ICC({40;41;42})', '#N/A', 'range'],
    ['TEST.ICC({40,;41,;42,43})', '#N/A', 'range'],
    ['TEST.ICC({40,41;42,43}, "4,1")', '#VALUE!', 'form'],
    ['TEST.ICC.LOW({40,41;42,43}, "2,1", 1)', '#NUM!', 'confidence'],
    ['TEST.ICC.LOW({40,41;42,43}, "2,1", 0)', '#NUM!', 'confidence'],
    ['TEST.ICC.HIGH({40,41;42,43}, , 95)', '#NUM!', 'confidence'],
  ]);

  test('its working shows the mean squares', () => {
    // Certified: NIST StRD SiRstv, between and within instruments.
    expect(evaluate('TEST.ICC(nist_sirstv)#BMS')).toBeCloseTo(5.11462616e-2 / 4, 12);
  });
});

describe('error, change and agreement', () => {
  checks([
    ['TEST.CONCORDANCE({1;2;3}, {2;3;4})', 4 / 7],
    ['TEST.CONCORDANCE({1;1}, {2;2})', 0],
    ['TEST.CONCORDANCE({1;1}, {1;1})', '#DIV/0!', 'a'],
    ['TEST.CONCORDANCE({1;""}, {1;2})', '#N/A', 'a'],
    ['TEST.SEM.TABLE({1,2})', '#N/A', 'range'],
    ['TEST.SEM.TABLE({1,2;2,3}, "low")', 0],
    ['TEST.SEM(5, 1.01)', '#NUM!', 'icc'],
    ['TEST.SEM(5, -.01)', '#NUM!', 'icc'],
    ['TEST.SEM(-1, .9)', '#NUM!', 'sd'],
    ['TEST.SEM(5, 0)', 5],
    // Konor 2012, IJSPT 7:279: SEM .4 cm and 1.3 deg; exact quantile 1.959963985.
    ['TEST.MDC(0.4)', 1.95996398454005 * Math.SQRT2 * 0.4],
    ['TEST.MDC(1.3)', 1.95996398454005 * Math.SQRT2 * 1.3],
    ['TEST.MDC(0)', 0],
    ['TEST.MDC(-0.1)', '#NUM!', 'sem'],
    ['TEST.MDC(1, 1)', '#NUM!', 'confidence'],
    ['TEST.SEM.TRIALS({40;41}, {40;41})', 0],
    ['TEST.SEM.TRIALS({40;41}, {42;43})', 0],
    ['TEST.SEM.TRIALS({40}, {41})', '#N/A', 'trial1'],
    ['TEST.SEM.TRIALS({40;;42}, {;41;43})', '#N/A', 'trial1'],
    ['TEST.SEM.TRIALS({40;41}, {42})', '#VALUE!', 'trial2'],
    ['TEST.BIAS({40}, {41})', -1],
    ['TEST.BIAS({""}, {41})', '#N/A', 'a'],
    ['TEST.BIAS({40;;42}, {41;50;43})', -1],
    ['TEST.LIMIT.LOW({40}, {41})', '#N/A', 'a'],
    ['TEST.LIMIT.HIGH({40;41}, {41;42})', -1],
    ['TEST.CV({40}, {40})', 0],
    ['TEST.CV({""}, {40})', '#N/A', 'trial1'],
    ['TEST.CV({5;40}, {-5;41})', '#DIV/0!', 'trial1'],
    ['TEST.SWC({40})', '#N/A', 'range'],
    ['TEST.SWC({40;40})', 0],
    ['TEST.SWC({40;44}, -1)', '#NUM!', 'factor'],
    ['TEST.CHANGE(0, TEST.MDC(1.3), 1.3)', 'within error'],
    ['TEST.CHANGE(30.1, 33.1, 0)', 'up'],
    ['TEST.CHANGE(30.1, 30.1, 0)', 'within error'],
    ['TEST.CHANGE(36, 39.7, 1.3)', 'up'],
    ['TEST.CHANGE(36, 32.3, 1.3)', 'down'],
    ['TEST.CHANGE(36, 39.7, 1.3, .99)', 'within error'],
    ['TEST.CHANGE(36, "", 1.3)', '#N/A', 'after'],
  ]);

  test('a change of exactly the minimal detectable change is error wherever it stands on the scale', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -500, max: 500, noNaN: true }),
        fc.double({ min: 0.01, max: 20, noNaN: true }),
        (before, sem) => {
          const mdc = invoke(registry.get('TEST.MDC')!, [sem]) as number;
          const change = (after: number) => invoke(registry.get('TEST.CHANGE')!, [before, after, sem]);
          expect(change(before + mdc)).toBe('within error');
          expect(change(before - mdc)).toBe('within error');
          expect(change(before + mdc * 1.001)).toBe('up');
          expect(change(before - mdc * 1.001)).toBe('down');
        },
      ),
    );
  });
});

describe('TEST.SIDES', () => {
  checks([
    ['TEST.SIDES(0, 0)', '#DIV/0!', 'left'],
    ['TEST.SIDES(0, 0, "limb")', '#DIV/0!', 'left'],
    ['TEST.SIDES(0, 10)', 200],
    ['TEST.SIDES(10, 0)', -200],
    ['TEST.SIDES(0, 10, "limb")', 0],
    ['TEST.SIDES(-1, 10)', '#NUM!', 'left'],
    ['TEST.SIDES(10, -1)', '#NUM!', 'right'],
    ['TEST.SIDES(10, 12, "angle")', '#VALUE!', 'index'],
  ]);
});

describe('when a target is reached', () => {
  const log = '{46001;46008;46015}, {8;9;10}';
  checks([
    [`=TEST.REACHED(${log}, 12)`, 46029],
    [`=TEST.REACHED(${log}, 9)`, 46008],
    [`=TEST.REACHED(${log}, 8)`, 46001],
    [`=TEST.REACHED(${log}, 7.9)`, '#N/A', 'target'],
    [`=TEST.REACHED(${log}, 7.9, "SLOPE")`, 1],
    // the time of day is cut off, and a pair with a blank is left out
    ['=TEST.REACHED({46001.9;46008.1;46010;46015.5}, {8;9;;10}, 12)', 46029],
    // falling toward a target below
    ['=TEST.REACHED({46001;46008;46015}, {10;9;8}, 6)', 46029],
    ['=TEST.REACHED({46001;46008;46015}, {10;9;8}, 11)', '#N/A', 'target'],
    // equal values have a slope, and no date
    ['=TEST.REACHED({46001;46008;46015}, {8.1;8.1;8.1}, 8.1)', '#N/A', 'values'],
    ['=TEST.REACHED({46001;46008;46015}, {8.1;8.1;8.1}, 9, "slope")', 0],
    ['=TEST.REACHED({46001;46008;46015}, {8.1;8.1;8.1}, 9, "low")', 0],
    ['=TEST.REACHED({46001;46008;46015}, {8.1;8.1;8.1}, 9, "high")', 0],
    // three tests on two days are too few, whatever is asked
    ['=TEST.REACHED({46001;46001.5;46015}, {8;9;10}, 12, "slope")', '#N/A', 'dates'],
    ['=TEST.REACHED({;}, {;}, 12, "high")', '#N/A', 'dates'],
    [`=TEST.REACHED(${log}, 12, "day")`, '#VALUE!', 'what'],
    [`=TEST.REACHED(${log}, "")`, '#N/A', 'target'],
    ['=TEST.REACHED({46001;46008}, {8;9;10}, 12)', '#VALUE!', 'values'],
  ]);
});
