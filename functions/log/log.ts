import { numbersIn } from '../core/invoke.ts';
import type { Range } from '../core/value.ts';
import { once, onceForTwo } from '../statistics/memo.ts';
import { athletesIn } from './athletes.ts';

/**
 * One athlete's part of a log, or all of it. Rows stand by day and, within a day, as in the table. Days without a row are
 * not listed.
 */
export interface Series {
  /** Day and value of each row. */
  readonly rowDays: Float64Array;
  readonly rowValues: Float64Array;
  /** Each day once, with the sum of its rows. */
  readonly days: Float64Array;
  readonly sums: Float64Array;
}

// A day is a date without its time; bound here once for the loop over all rows.
const { floor } = Math;

/** A log in order: athlete by athlete, each by day. */
interface Log {
  readonly rowDays: Float64Array;
  readonly rowValues: Float64Array;
  readonly days: Float64Array;
  readonly sums: Float64Array;
  /** Where each athlete's rows and days begin; one entry more than there are athletes. */
  readonly firstRow: Int32Array;
  readonly firstDay: Int32Array;
}

/** The numbers of a range at their places, NaN where there is none. */
const cellsOf: (range: Range) => Float64Array = once((range) => {
  const { values, at } = numbersIn(range);
  const cells = new Float64Array(range.kinds.length).fill(Number.NaN);
  for (let i = 0; i < at.length; i++) cells[at[i]!] = values[i]!;
  return cells;
});

/** Rows of a log in order of athlete, day and place; those without a date or a name are left out. */
interface Order {
  readonly rows: Int32Array;
  readonly days: Float64Array;
  readonly first: Int32Array;
}

/** Rows without names belong to athlete 0. */
function orderRows(dates: Range, athletes: Range | undefined): Order {
  const { values, at } = numbersIn(dates);
  const who = athletes && athletesIn(athletes);
  const count = who?.count ?? 1;
  const first = new Int32Array(count + 1);
  for (const row of at) {
    const athlete = who ? who.ofRow[row]! : 0;
    if (athlete >= 0) first[athlete + 1]!++;
  }
  for (let a = 0; a < count; a++) first[a + 1]! += first[a]!;
  const rows = new Int32Array(first[count]!);
  const days = new Float64Array(rows.length);
  const next = first.slice();
  for (let i = 0; i < at.length; i++) {
    const athlete = who ? who.ofRow[at[i]!]! : 0;
    if (athlete < 0) continue;
    const place = next[athlete]!++;
    rows[place] = at[i]!;
    days[place] = floor(values[i]!);
  }
  for (let a = 0; a < count; a++) sortByDay(rows, days, first[a]!, first[a + 1]!);
  return { rows, days, first };
}

/** Sorts a stretch by day, keeping the order of the table within a day. Most logs are in order already. */
function sortByDay(rows: Int32Array, days: Float64Array, from: number, to: number): void {
  let sorted = true;
  for (let i = from + 1; i < to && sorted; i++) sorted = days[i - 1]! <= days[i]!;
  if (sorted) return;
  const order = Array.from({ length: to - from }, (_, i) => from + i);
  order.sort((i, j) => days[i]! - days[j]! || i - j);
  const sortedRows = order.map((i) => rows[i]!);
  const sortedDays = order.map((i) => days[i]!);
  rows.set(sortedRows, from);
  days.set(sortedDays, from);
}

const orderOfAll = once((dates: Range) => orderRows(dates, undefined));
const orderByAthlete = onceForTwo((dates: Range, athletes: Range) => orderRows(dates, athletes));

/** Takes the rows that have a value, and adds up each day. */
function readLog(order: Order, values: Range): Log {
  const cells = cellsOf(values);
  const size = order.rows.length;
  const athletes = order.first.length - 1;
  const rowDays = new Float64Array(size);
  const rowValues = new Float64Array(size);
  const days = new Float64Array(size);
  const sums = new Float64Array(size);
  const firstRow = new Int32Array(athletes + 1);
  const firstDay = new Int32Array(athletes + 1);
  let row = 0;
  let day = 0;
  for (let a = 0; a < athletes; a++) {
    firstRow[a] = row;
    firstDay[a] = day;
    for (let i = order.first[a]!; i < order.first[a + 1]!; i++) {
      const value = cells[order.rows[i]!]!;
      if (Number.isNaN(value)) continue;
      const on = order.days[i]!;
      rowDays[row] = on;
      rowValues[row++] = value;
      if (day > firstDay[a]! && days[day - 1] === on) sums[day - 1]! += value;
      else {
        days[day] = on;
        sums[day++] = value;
      }
    }
  }
  firstRow[athletes] = row;
  firstDay[athletes] = day;
  return { rowDays, rowValues, days, sums, firstRow, firstDay };
}

const logOfAll = onceForTwo((dates: Range, values: Range) => readLog(orderOfAll(dates), values));
const logByAthlete = onceForTwo((dates: Range, athletes: Range) =>
  once((values: Range) => readLog(orderByAthlete(dates, athletes), values)),
);

/**
 * The rows of a log, or of one athlete's part of it: undefined when there are none. The log is read and put in order once
 * for the columns given, whoever asks and however often.
 */
export function seriesOf(
  dates: Range,
  values: Range,
  athletes: Range | undefined,
  athleteKey: string | undefined,
): Series | undefined {
  const athlete = athletes ? athletesIn(athletes).numberOf.get(athleteKey ?? '') : 0;
  if (athlete === undefined) return undefined;
  const log = athletes ? logByAthlete(dates, athletes)(values) : logOfAll(dates, values);
  const [row, rowEnd] = [log.firstRow[athlete]!, log.firstRow[athlete + 1]!];
  const [day, dayEnd] = [log.firstDay[athlete]!, log.firstDay[athlete + 1]!];
  if (row === rowEnd) return undefined;
  return {
    rowDays: log.rowDays.subarray(row, rowEnd),
    rowValues: log.rowValues.subarray(row, rowEnd),
    days: log.days.subarray(day, dayEnd),
    sums: log.sums.subarray(day, dayEnd),
  };
}

/** Places of ascending days in [from, to]. */
export function between(days: Float64Array, from: number, to: number): readonly [number, number] {
  return [firstAfter(days, from - 1), firstAfter(days, to)];
}

/** First place whose day is later than `day`. */
function firstAfter(days: Float64Array, day: number): number {
  let low = 0;
  let high = days.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (days[middle]! <= day) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Place of the last row on `day` or earlier; −1 when there is none. */
export const lastPlace = (days: Float64Array, day: number): number => firstAfter(days, day) - 1;
