import { Kind } from '../../../functions/core/value.ts';
import { mean, standardDeviation } from '../../../functions/statistics/describe.ts';
import { columnOf, sheetOf } from '../../book/book.ts';
import { CellKind } from '../../book/cells.ts';
import type { ReadContext } from '../open-book.ts';
import { displayOf } from '../text/display.ts';
import { type FormulaSummary, formulaSummary } from './own-summary.ts';
import { sheetViewOf } from './sheet-view.ts';

/** What a column holds at a glance; texts are in its unit and digits, one more digit for the mean and the SD. */
export interface ColumnSummary {
  readonly rows: number;
  readonly filled: number;
  readonly numbers: number;
  readonly held: number;
  readonly errors: number;
  /** null without a number, `sd` without two; a sum of dates is none. */
  readonly sum: string | null;
  readonly mean: string | null;
  readonly sd: string | null;
  readonly least: string | null;
  readonly most: string | null;
  /** What the column's own formula gives, where the sheet's view has one for it. */
  readonly own?: FormulaSummary;
}

/** Summary over the rows given, all when left out. */
export function summaryOf(
  context: ReadContext,
  sheetId: string,
  columnId: string,
  rows?: ArrayLike<number>,
): ColumnSummary {
  const sheet = sheetOf(context.book, sheetId);
  const column = columnOf(sheet, columnId);
  const cells = sheet.cells.get(columnId)!;
  const range = context.calculation.column(sheetId, columnId);
  const count = rows?.length ?? sheet.rows;
  const values = new Float64Array(count);
  let [numbers, filled, held, errors] = [0, 0, 0, 0];
  for (let i = 0; i < count; i++) {
    const row = rows?.[i] ?? i;
    const kind = range.kinds[row];
    if (cells.kinds[row] === CellKind.held) held++;
    if (kind !== Kind.blank) filled++;
    if (kind === Kind.error) errors++;
    if (kind === Kind.number || kind === Kind.date) values[numbers++] = range.numbers[row]!;
  }
  const found = values.subarray(0, numbers);
  const show = (value: number, more = 0): string => {
    const digits = column.format?.digits;
    const format = digits === undefined ? { digits: 2 } : { ...column.format, digits: digits + more };
    return displayOf(
      value,
      { ...column, ...(more || digits !== undefined ? { format } : {}) },
      context.locale,
    );
  };
  const any = numbers > 0;
  const chosen = sheetViewOf(context.book, sheetId)?.summaries?.find((one) => one.column === columnId);
  return {
    ...(chosen && 'formula' in chosen
      ? { own: formulaSummary(context, sheetId, columnId, chosen, rows) }
      : {}),
    rows: count,
    filled,
    numbers,
    held,
    errors,
    sum: any && column.kind === 'number' ? show(found.reduce((a, b) => a + b, 0)) : null,
    mean: any ? show(mean(found), 1) : null,
    sd: numbers > 1 && column.kind === 'number' ? show(standardDeviation(found), 1) : null,
    least: any ? show(found.reduce((a, b) => Math.min(a, b))) : null,
    most: any ? show(found.reduce((a, b) => Math.max(a, b))) : null,
  };
}
