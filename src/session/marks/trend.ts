import { Kind, type Range } from '../../../functions/core/value.ts';
import { columnOf, findSheet, sheetOf } from '../../book/book.ts';
import type { Column, Sheet } from '../../book/model.ts';
import { unitSign } from '../../units/sign.ts';
import { displayUnitOf } from '../../units/unit.ts';
import type { ReadContext } from '../open-book.ts';
import { displayOf, writer } from '../text/display.ts';
import type { TrendSource } from './mark-record.ts';
import { remembered } from './remembered.ts';
import { spanOf } from './scale.ts';

/** A line in a cell: places from left to right and from bottom to top, 0 to 1, and what it shows in words. */
export interface TrendLine {
  /** x, y, x, y, …; NaN breaks the line. */
  readonly at: Float32Array;
  readonly words: string;
}

/** Draws the line of a row; null where fewer than two values are there. */
export type TrendOf = (row: number) => TrendLine | null;

/** @throws Refusal where a column is gone */
export function trendOf(context: ReadContext, sheetId: string, trend: TrendSource): TrendOf {
  return trend.is === 'columns' ? acrossColumns(context, sheetId, trend) : fromLog(context, sheetId, trend);
}

type Value = readonly [x: number, y: number];

function acrossColumns(
  { book, calculation, locale }: ReadContext,
  sheetId: string,
  { columns, together }: Extract<TrendSource, { is: 'columns' }>,
): TrendOf {
  const sheet = sheetOf(book, sheetId);
  const of = columns.map((id) => columnOf(sheet, id));
  const ranges = of.map(({ id }) => calculation.column(sheetId, id));
  const span = together
    ? remembered(calculation, `trend ${sheetId}\u0000${columns.join('\u0000')}`, ranges, () => {
        const spans = ranges.map(spanOf);
        return [Math.min(...spans.map(([a]) => a)), Math.max(...spans.map(([, b]) => b))] as const;
      })
    : undefined;
  const name = `${of[0]!.label} to ${of.at(-1)!.label}`;
  return (row) => {
    const values = ranges.map(
      ({ kinds, numbers }, x): Value => [x, kinds[row] === Kind.number ? numbers[row]! : Number.NaN],
    );
    return lineOf(name, values, [0, columns.length - 1], span, (value) => textOf(value, of[0]!, locale));
  };
}

function fromLog(context: ReadContext, sheetId: string, trend: Extract<TrendSource, { is: 'log' }>): TrendOf {
  const { book, calculation, locale } = context;
  const log = sheetOf(book, trend.sheet);
  const [dates, values, who] = [trend.dates, trend.values, trend.who].map((id) =>
    calculation.column(log.id, columnOf(log, id).id),
  ) as [Range, Range, Range];
  const rowsBy = remembered(
    calculation,
    `log ${log.id}\u0000${trend.dates}\u0000${trend.values}\u0000${trend.who}`,
    [dates, values, who],
    () => ordered(dates, values, keysOf(context, log, trend.who)),
  );
  const span = trend.together
    ? remembered(calculation, `span ${log.id}\u0000${trend.values}`, [values], () => spanOf(values))
    : undefined;
  const keyOf = keysOf(context, sheetOf(book, sheetId), trend.by);
  const measured = columnOf(log, trend.values);
  return (row) => {
    const key = keyOf(row);
    const rows = key === '' ? undefined : rowsBy.get(key);
    if (!rows) return null;
    const newest = rows.slice(-trend.last);
    const points = newest.map((at): Value => [dates.numbers[at]!, values.numbers[at]!]);
    const ends = [points[0]![0], points.at(-1)![0]] as const;
    return lineOf(measured.label, points, ends, span, (value) => textOf(value, measured, locale));
  };
}

/** What a row is called in a column, as it is compared: as shown, in any case. */
function keysOf(
  { book, calculation, locale }: ReadContext,
  sheet: Sheet,
  id: string,
): (row: number) => string {
  const column = columnOf(findSheet(book, sheet.id)!, id);
  const write = writer(column, locale);
  const range = calculation.column(sheet.id, id);
  return (row) => (range.kinds[row] === Kind.error ? '' : write(range, row).trim().toLowerCase());
}

/** Rows of a log that have a date and a number, by whose they are, the oldest first. */
function ordered(dates: Range, values: Range, keyOf: (row: number) => string): Map<string, number[]> {
  const rows = new Map<string, number[]>();
  for (let row = 0; row < dates.rows; row++) {
    if (values.kinds[row] !== Kind.number) continue;
    if (dates.kinds[row] !== Kind.date && dates.kinds[row] !== Kind.number) continue;
    const key = keyOf(row);
    if (key === '') continue;
    const own = rows.get(key);
    if (own) own.push(row);
    else rows.set(key, [row]);
  }
  for (const own of rows.values()) own.sort((a, b) => dates.numbers[a]! - dates.numbers[b]! || a - b);
  return rows;
}

function lineOf(
  name: string,
  values: readonly Value[],
  [first, last]: readonly [number, number],
  together: readonly [number, number] | undefined,
  text: (value: number) => string,
): TrendLine | null {
  const known = values.flatMap(([, y]) => (Number.isNaN(y) ? [] : [y]));
  if (known.length < 2) return null;
  const [least, most] = [Math.min(...known), Math.max(...known)];
  const [low, high] = together ?? [least, most];
  const at = new Float32Array(values.length * 2);
  values.forEach(([x, y], i) => {
    at[2 * i] = last > first ? (x - first) / (last - first) : i / (values.length - 1);
    // Values that are all the same lie in the middle.
    at[2 * i + 1] = high > low ? (y - low) / (high - low) : Number.isNaN(y) ? y : 0.5;
  });
  return { at, words: `${name}: ${inWords(known, least, most, text)}` };
}

function inWords(
  values: readonly number[],
  least: number,
  most: number,
  text: (value: number) => string,
): string {
  const [from, to] = [text(values[0]!), text(values.at(-1)!)];
  const way = from === to ? `from ${from} to the same` : `from ${from} to ${to}`;
  return `${values.length} values, ${way}; minimum ${text(least)}, maximum ${text(most)}`;
}

function textOf(value: number, column: Column, locale: ReadContext['locale']): string {
  const unit = displayUnitOf(column)?.unit;
  const text = displayOf(value, column, locale);
  return unit === undefined ? text : unit === 'deg' ? `${text}°` : `${text} ${unitSign(unit)}`;
}
