import { Kind } from '../../../functions/core/value.ts';
import type { Sheet } from '../../book/model.ts';
import { Refusal } from '../../book/refusal.ts';
import type { ReadContext } from '../open-book.ts';
import { type ColumnMarks, marksOfSheet } from './mark-record.ts';
import { ruledRows } from './mark-rules.ts';
import { numberInWords } from './mark-words.ts';
import { endsOf, shareOf } from './scale.ts';
import { type TrendLine, trendOf } from './trend.ts';

/** What is drawn into the cells of a column, row by row of a tile. */
export interface Drawing {
  /** Index of the column in the sheet. */
  readonly column: number;
  /** The rule that a row shows, from 1; 0 for none. */
  readonly rules?: Uint8Array;
  readonly scale?: {
    /** Where nought stands, 0 to 1; at an end where the scale has no nought in it. */
    readonly zero: number;
    /** Where each value stands, 0 to 1; NaN for none. */
    readonly at: Float32Array;
    /** The scale in words: "from 31° to 58°". */
    readonly words: string;
  };
  readonly trends?: readonly (TrendLine | null)[];
}

/** The drawings of a block of a sheet: `rowAt` says which sheet row each of its rows is. */
export function drawingsOf(
  context: ReadContext,
  sheet: Sheet,
  block: { readonly column: number; readonly columns: number; readonly rows: number },
  rowAt: (row: number) => number,
): readonly Drawing[] {
  return marksOfSheet(context.book, sheet.id).flatMap((marks) => {
    const column = sheet.columns.findIndex(({ id }) => id === marks.column);
    if (column < block.column || column >= block.column + block.columns) return [];
    const rows = Int32Array.from({ length: block.rows }, (_, row) => rowAt(row));
    return [{ column, ...ofColumn(context, sheet, marks, rows) }];
  });
}

function ofColumn(
  context: ReadContext,
  sheet: Sheet,
  marks: ColumnMarks,
  rows: Int32Array,
): Omit<Drawing, 'column'> {
  const shown = marks.rules.length
    ? ruledRows(context, sheet.id, marks.column, marks.rules).shown
    : undefined;
  const trend = marks.trend && soft(() => trendOf(context, sheet.id, marks.trend!));
  const scale = marks.scale && scaleOf(context, sheet, marks, rows);
  return {
    // A row past the last is the blank one after it.
    ...(shown ? { rules: Uint8Array.from(rows, (row) => shown[row] ?? 0) } : {}),
    ...(scale ? { scale } : {}),
    ...(trend ? { trends: Array.from(rows, (row) => (row < sheet.rows ? trend(row) : null)) } : {}),
  };
}

function scaleOf(
  context: ReadContext,
  sheet: Sheet,
  { column: id, scale }: ColumnMarks,
  rows: Int32Array,
): Drawing['scale'] {
  const ends = endsOf(context, sheet.id, id, scale!);
  if ('sentence' in ends) return undefined;
  const { kinds, numbers } = context.calculation.column(sheet.id, id);
  const column = sheet.columns.find((one) => one.id === id)!;
  const end = (value: number): string => numberInWords(Number(value.toPrecision(4)), column, context.locale);
  return {
    zero: shareOf(0, ends),
    at: Float32Array.from(rows, (row) =>
      kinds[row] === Kind.number || kinds[row] === Kind.date ? shareOf(numbers[row]!, ends) : Number.NaN,
    ),
    words: `from ${end(ends.from)} to ${end(ends.to)}`,
  };
}

/** A record may name what an import or a hand-made file has not: then nothing is drawn, and the dialogue says why. */
function soft<T>(work: () => T): T | undefined {
  try {
    return work();
  } catch (reason) {
    if (reason instanceof Refusal) return undefined;
    throw reason;
  }
}
