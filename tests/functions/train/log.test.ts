import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { invoke } from '../../../functions/core/invoke.ts';
import { isIssue } from '../../../functions/core/issue.ts';
import { type Argument, columnRange, type Value } from '../../../functions/core/value.ts';
import { registry } from '../../../functions/registry.ts';

interface Row {
  readonly date: number | null;
  readonly value: number | null;
  readonly name: string;
}

const FIRST = 46000;
const people = ['Ida', 'Bo', 'Åse'];
const spellings = people.flatMap((name) => [name, name.toUpperCase(), ` ${name.toLowerCase()} `]);
const row: fc.Arbitrary<Row> = fc.record({
  // A time of day now and then, and blanks.
  date: fc.option(
    fc
      .tuple(fc.integer({ min: FIRST, max: FIRST + 45 }), fc.constantFrom(0, 0, 0.25, 0.999))
      .map(([d, t]) => d + t),
    { freq: 12 },
  ),
  value: fc.option(
    fc.integer({ min: 0, max: 60 }).map((v) => v * 10),
    { freq: 12 },
  ),
  name: fc.constantFrom(...spellings, ''),
});
const logs = fc.array(row, { minLength: 1, maxLength: 80 });
const questions = fc.record({
  on: fc.integer({ min: FIRST - 2, max: FIRST + 60 }),
  hours: fc.constantFrom(0, 0.5),
  days: fc.integer({ min: 1, max: 30 }),
  who: fc.option(fc.constantFrom('ida', 'BO ', 'åse', 'nobody')),
});

/** What the rules say, day by day, with no thought for speed. */
function transcription(
  log: readonly Row[],
  { on, days, who }: { on: number; days: number; who: string | null },
) {
  const fold = (name: string) => name.trim().toLowerCase();
  const rows = log.filter(
    (r) => r.date !== null && r.value !== null && (who === null || fold(r.name) === fold(who)),
  ) as { date: number; value: number }[];
  const dates = rows.map((r) => Math.floor(r.date));
  const first = Math.min(...dates);
  const loads = new Map<number, number>();
  for (const r of rows) loads.set(Math.floor(r.date), (loads.get(Math.floor(r.date)) ?? 0) + r.value);
  const load = (day: number) => loads.get(day) ?? 0;
  const window = (from: number, to: number) =>
    Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => load(from + i));
  const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0);
  const mean = (list: readonly number[]) => sum(list) / list.length;
  const ewma = (n: number) => {
    const lambda = 2 / (n + 1);
    let level = load(first);
    for (let day = first + 1; day <= on; day++) level = lambda * load(day) + (1 - lambda) * level;
    return level;
  };
  const reaches = (length: number) => on - first >= length - 1;
  const week = window(on - days + 1, on);
  const sd = Math.sqrt(sum(week.map((v) => (v - mean(week)) ** 2)) / (days - 1));
  const spread = week.some((v) => v !== week[0]);
  const past = rows.filter((r) => Math.floor(r.date) <= on);
  const latest = Math.max(...past.map((r) => Math.floor(r.date)));
  const acwr = (coupled: boolean) => {
    if (!reaches(28)) return '#N/A';
    const chronic = mean(coupled ? window(on - 27, on) : window(on - 27, on - 7));
    return chronic === 0 ? '#DIV/0!' : mean(window(on - 6, on)) / chronic;
  };
  const none = rows.length === 0;
  return {
    SUM: none ? '#N/A' : sum(week),
    MEAN: none || !reaches(days) ? '#N/A' : mean(week),
    ACWR: none ? '#N/A' : acwr(true),
    UNCOUPLED: none ? '#N/A' : acwr(false),
    EWMA: none || on < first ? '#N/A' : ewma(days),
    'EWMA.RATIO': none || !reaches(28) ? '#N/A' : ewma(28) === 0 ? '#DIV/0!' : ewma(7) / ewma(28),
    MONOTONY: none || days === 1 || !reaches(days) ? '#N/A' : spread ? mean(week) / sd : '#DIV/0!',
    STRAIN:
      none || days === 1 || !reaches(days) ? '#N/A' : spread ? (sum(week) * mean(week)) / sd : '#DIV/0!',
    LAST: past.length === 0 ? '#N/A' : past.findLast((r) => Math.floor(r.date) === latest)!.value,
    SINCE: past.length === 0 ? '#N/A' : on - latest,
    BEST: (() => {
      const span = rows.filter((r) => Math.floor(r.date) > on - days && Math.floor(r.date) <= on);
      return span.length === 0 ? '#N/A' : Math.max(...span.map((r) => r.value));
    })(),
  };
}

describe('training log functions', () => {
  test('agree with a day-by-day transcription of their rules on random logs', () => {
    fc.assert(
      fc.property(logs, questions, (log, question) => {
        const dates = columnRange(...log.map((r): Value => r.date));
        const values = columnRange(...log.map((r): Value => r.value));
        const names = columnRange(...log.map((r): Value => r.name));
        const who: Argument[] = question.who === null ? [] : [names, question.who];
        const at = question.on + question.hours;
        const { days } = question;
        const ask = (name: string, ...args: Argument[]) => {
          const outcome = invoke(registry.get(`TRAIN.${name}`)!, [dates, values, ...args]);
          return isIssue(outcome) ? outcome.code : outcome;
        };
        const got: Record<string, unknown> = {
          SUM: ask('SUM', at, days, ...who),
          MEAN: ask('MEAN', at, days, ...who),
          ACWR: ask('ACWR', at, 7, 28, true, ...who),
          UNCOUPLED: ask('ACWR', at, undefined, null, false, ...who),
          EWMA: ask('EWMA', at, days, ...who),
          'EWMA.RATIO': ask('EWMA.RATIO', at, 7, 28, ...who),
          MONOTONY: ask('MONOTONY', at, days, ...who),
          STRAIN: ask('STRAIN', at, days, ...who),
          LAST: ask('LAST', at, ...who),
          SINCE: ask('SINCE', at, ...who),
          BEST: ask('BEST', at - days + 1, at, ...who),
        };
        for (const [name, expected] of Object.entries(transcription(log, question))) {
          if (typeof expected === 'string') expect(got[name], name).toBe(expected);
          else if (typeof got[name] !== 'number')
            expect.fail(`TRAIN.${name} gave ${got[name]}, not ${expected}`);
          else
            expect(Math.abs(got[name] - expected), `TRAIN.${name}`).toBeLessThanOrEqual(
              1e-10 * Math.max(1, Math.abs(expected)),
            );
        }
      }),
      { numRuns: 300 },
    );
  });

  test('the order of the rows changes nothing but LAST of one day', () => {
    fc.assert(
      fc.property(logs, fc.integer({ min: 0, max: 79 }), questions, (log, turn, { on, days }) => {
        const turned = [...log.slice(turn % log.length), ...log.slice(0, turn % log.length)];
        const sum = (rows: readonly Row[]) =>
          invoke(registry.get('TRAIN.SUM')!, [
            columnRange(...rows.map((r): Value => r.date)),
            columnRange(...rows.map((r): Value => r.value)),
            on,
            days,
          ]);
        expect(sum(turned)).toEqual(sum(log));
      }),
    );
  });

  test('coupled = 4u/(u + 3) with windows of 7 and 28 days, u uncoupled', () => {
    const daily = fc.array(fc.integer({ min: 1, max: 900 }), { minLength: 28, maxLength: 28 });
    fc.assert(
      fc.property(daily, (loads) => {
        const dates = columnRange(...loads.map((_, i) => FIRST + i));
        const values = columnRange(...loads);
        const ratio = (coupled: boolean) =>
          invoke(registry.get('TRAIN.ACWR')!, [dates, values, FIRST + 27, 7, 28, coupled]) as number;
        const u = ratio(false);
        expect(ratio(true)).toBeCloseTo((4 * u) / (u + 3), 12);
      }),
    );
  });

  test('a changed column is a new column: nothing is remembered from the old one', () => {
    const dates = columnRange(FIRST, FIRST + 1);
    const sum = (values: readonly number[]) =>
      invoke(registry.get('TRAIN.SUM')!, [dates, columnRange(...values), FIRST + 1]);
    expect(sum([10, 20])).toBe(30);
    expect(sum([10, 25])).toBe(35);
  });
});
