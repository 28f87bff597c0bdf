import { cpus } from 'node:os';
import type { AnyDefinition } from '../../functions/core/define.ts';
import { invoke } from '../../functions/core/invoke.ts';
import { type Argument, type Range, rangeOf, type Value } from '../../functions/core/value.ts';
import { registry } from '../../functions/registry.ts';

const ROWS = 100_000;
const ATHLETES = 200;
const FIRST = 45_600;
const DAYS = 700;

/** A row of the answer: a column of the monitoring sheet against one plain pass over the log. */
export interface LogTiming {
  readonly column: string;
  readonly milliseconds: number;
  readonly pass: number;
  readonly ratio: number;
}
export interface LogBench {
  readonly machine: string;
  readonly rows: number;
  readonly athletes: number;
  readonly columns: readonly LogTiming[];
  readonly all: LogTiming;
  /** Rows of the sheet whose answer differed from the plain pass; must be 0. */
  readonly wrong: number;
}

interface Log {
  readonly dates: Range;
  readonly values: Range;
  readonly names: Range;
  readonly athletes: readonly string[];
}

/** A log in the order in which sessions are written down: by day, athletes as they come. */
function makeLog(seed: number): Log {
  let state = seed;
  const random = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const athletes = Array.from({ length: ATHLETES }, (_, i) => `Lifter ${i + 1}`);
  const dates: Value[] = [];
  const values: Value[] = [];
  const names: Value[] = [];
  for (let i = 0; i < ROWS; i++) {
    dates.push(FIRST + Math.floor((i / ROWS) * DAYS) + random() * 0.9);
    values.push(Math.round(100 + random() * 600));
    const name = athletes[i < ATHLETES ? i : Math.floor(random() * ATHLETES)]!;
    names.push(random() < 0.1 ? name.toUpperCase() : name);
  }
  return {
    dates: rangeOf(ROWS, 1, dates),
    values: rangeOf(ROWS, 1, values),
    names: rangeOf(ROWS, 1, names),
    athletes,
  };
}

const ON = FIRST + DAYS - 1;
type Column = readonly [name: string, args: (log: Log, athlete: string) => readonly Argument[]];
const who = (log: Log, athlete: string): Argument[] => [log.names, athlete];
const columns: readonly Column[] = [
  ['SUM', (log, a) => [ON, 7, ...who(log, a)]],
  ['SUM', (log, a) => [ON, 28, ...who(log, a)]],
  ['MEAN', (log, a) => [ON, 7, ...who(log, a)]],
  ['ACWR', (log, a) => [ON, 7, 28, true, ...who(log, a)]],
  ['ACWR', (log, a) => [ON, 7, 28, false, ...who(log, a)]],
  ['EWMA', (log, a) => [ON, 7, ...who(log, a)]],
  ['EWMA.RATIO', (log, a) => [ON, 7, 28, ...who(log, a)]],
  ['MONOTONY', (log, a) => [ON, 28, ...who(log, a)]],
  ['BEST', (log, a) => [FIRST, ON, ...who(log, a)]],
  ['LAST', (log, a) => [ON, ...who(log, a)]],
  ['SINCE', (log, a) => [ON, ...who(log, a)]],
  ['TREND', (log, a) => [undefined, undefined, ...who(log, a)]],
];

/**
 * The plain pass: one walk over the columns of the log that sums a week for every athlete. Reads the cells as they stand
 * and keeps nothing between calls, as a formula without an index would have to.
 */
function plainPass({ dates, values, names }: Log): ReadonlyMap<string, number> {
  const sums = new Map<string, number>();
  for (let i = 0; i < ROWS; i++) {
    const day = Math.floor(dates.numbers[i]!);
    if (dates.kinds[i] === 0 || values.kinds[i] === 0) continue;
    const name = names.texts![i]!.trim().toLowerCase();
    if (day > ON - 7 && day <= ON) sums.set(name, (sums.get(name) ?? 0) + values.numbers[i]!);
  }
  return sums;
}

/** What each column must answer for an athlete, from a filter over the rows. */
function expected({ dates, values, names }: Log, name: string): readonly ((value: number) => boolean)[] {
  const rows: { day: number; value: number }[] = [];
  for (let i = 0; i < ROWS; i++)
    if (names.texts![i]!.trim().toLowerCase() === name)
      rows.push({ day: Math.floor(dates.numbers[i]!), value: values.numbers[i]! });
  const loads = new Float64Array(DAYS);
  for (const { day, value } of rows) loads[day - FIRST]! += value;
  const sum = (list: ArrayLike<number>) => Array.from(list).reduce((a, b) => a + b, 0);
  const last = (days: number, skip = 0) => sum(loads.subarray(DAYS - days, DAYS - skip));
  const start = loads.findIndex((load) => load > 0);
  const ewma = (days: number) =>
    loads
      .subarray(start + 1)
      .reduce((level, load) => level + (2 / (days + 1)) * (load - level), loads[start]!);
  const month = loads.subarray(DAYS - 28);
  const mean = sum(month) / 28;
  const meanDay = sum(rows.map(({ day }) => day)) / rows.length;
  const slope =
    sum(rows.map(({ day, value }) => (day - meanDay) * value)) /
    sum(rows.map(({ day }) => (day - meanDay) ** 2));
  const latest = rows.at(-1)!;
  return [
    last(7),
    last(28),
    last(7) / 7,
    last(7) / 7 / (last(28) / 28),
    last(7) / 7 / (last(28, 7) / 21),
    ewma(7),
    ewma(7) / ewma(28),
    mean / Math.sqrt(sum(month.map((load) => (load - mean) ** 2)) / 27),
    rows.reduce((best, { value }) => Math.max(best, value), 0),
    latest.value,
    ON - latest.day,
    7 * slope,
  ].map((answer) => (value) => Math.abs(value - answer) <= 1e-9 * Math.max(1, Math.abs(answer)));
}

function time<T>(work: () => T): { readonly ms: number; readonly result: T } {
  const start = performance.now();
  const result = work();
  return { ms: performance.now() - start, result };
}

/** Best of a few runs on each side: what the work costs when nothing else holds the machine. */
const best = (values: readonly number[]): number => Math.min(...values);

/**
 * A monitoring sheet of 200 athletes × 12 columns over a log of 100,000 rows, cold (the log was never seen) against as
 * many plain passes. Checks its answers. Prints nothing.
 */
export function benchLog(runs = 7): LogBench {
  const sheets: number[][] = columns.map(() => []);
  const totals: number[] = [];
  const passes: number[] = [];
  let wrong = 0;
  plainPass(makeLog(1));
  for (let run = 0; run < runs; run++) {
    // A new log each run: no cache can know it.
    const log = makeLog(run + 7);
    const { ms, result: sums } = time(() => plainPass(log));
    passes.push(ms);
    let total = 0;
    columns.forEach(([name, args], c) => {
      const definition: AnyDefinition = registry.get(`TRAIN.${name}`)!;
      const { ms: took, result } = time(() =>
        log.athletes.map((athlete) => invoke(definition, [log.dates, log.values, ...args(log, athlete)])),
      );
      sheets[c]!.push(took);
      total += took;
      result.forEach((value, i) => {
        const name = log.athletes[i]!.toLowerCase();
        if (c === 0 && value !== (sums.get(name) ?? 0)) wrong++;
        // The other columns are looked up row by row for every twentieth athlete.
        else if (i % 20 === 0 && !expected(log, name)[c]!(value as number)) wrong++;
        else if (typeof value !== 'number') wrong++;
      });
    });
    totals.push(total);
  }
  const pass = best(passes);
  const line = (column: string, ms: number, against: number): LogTiming => ({
    column,
    milliseconds: ms,
    pass: against,
    ratio: ms / against,
  });
  return {
    machine: `${cpus()[0]?.model ?? 'unknown'} × ${cpus().length}, Node ${process.version}`,
    rows: ROWS,
    athletes: ATHLETES,
    columns: columns.map(([name], c) => line(`TRAIN.${name}`, best(sheets[c]!), pass)),
    all: line('all twelve', best(totals), pass * columns.length),
    wrong,
  };
}
