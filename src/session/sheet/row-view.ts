import { Kind } from '../../../functions/core/value.ts';
import { columnOf, sheetOf } from '../../book/book.ts';
import { type Cell, CellKind } from '../../book/cells.ts';
import { z } from '../../book/zod.ts';
import { marksOfSheet, type Rule } from '../marks/mark-record.ts';
import { ruledRows } from '../marks/mark-rules.ts';
import type { ReadContext } from '../open-book.ts';
import { cellWriter } from '../text/cell-text.ts';
import { readTyped } from '../text/typed.ts';
import { allRows, byValue, ordered } from './order.ts';

/** One condition on a column. Texts are as typed, in the column's unit and the book's locale. */
const condition = z.discriminatedUnion('is', [
  z.strictObject({ column: z.string(), is: z.literal('containing'), text: z.string() }),
  z.strictObject({ column: z.string(), is: z.literal('one of'), texts: z.array(z.string()).max(10_000) }),
  z.strictObject({
    column: z.string(),
    is: z.literal('from to'),
    from: z.string().optional(),
    to: z.string().optional(),
  }),
  z.strictObject({
    column: z.string(),
    is: z.enum(['blank', 'filled', 'held', 'error', 'own value', 'marked']),
  }),
]);
export type Condition = z.infer<typeof condition>;

/**
 * A way to look at a sheet that leaves the order of its rows alone: conditions that all must hold, an order, and a column
 * by whose values rows stand together. Kept in the book's part `views` under the id of the sheet, if it is to be kept.
 */
export const rowView = z.strictObject({
  where: z.array(condition).max(50).optional(),
  sort: z
    .array(z.strictObject({ column: z.string(), descending: z.boolean().optional() }))
    .max(20)
    .optional(),
  group: z.string().optional(),
});
export type RowView = z.infer<typeof rowView>;

/** The rows that a view shows, in its order, by their index in the sheet. */
export function rowsInView(
  context: ReadContext,
  sheetId: string,
  { where = [], sort = [], group }: RowView,
): Int32Array {
  const sheet = sheetOf(context.book, sheetId);
  const tests = where.map((one) => testFor(context, sheetId, one));
  const rows =
    tests.length === 0
      ? allRows(sheet.rows)
      : allRows(sheet.rows).filter((row) => tests.every((t) => t(row)));
  const keys = group === undefined ? sort : [{ column: group, descending: false }, ...sort];
  if (keys.length === 0) return rows;
  return ordered(
    rows,
    keys.map(({ column, descending = false }) =>
      byValue(context.calculation.column(sheetId, columnOf(sheet, column).id), descending),
    ),
  );
}

const none: readonly Rule[] = [];
type RowTest = (row: number) => boolean;

function testFor(context: ReadContext, sheetId: string, one: Condition): RowTest {
  const sheet = sheetOf(context.book, sheetId);
  const column = columnOf(sheet, one.column);
  const cells = sheet.cells.get(column.id)!;
  const range = context.calculation.column(sheetId, column.id);
  const shown = cellWriter(context, sheet, column);
  switch (one.is) {
    case 'containing': {
      const wanted = one.text.toLowerCase();
      return (row) => shown(row).toLowerCase().includes(wanted);
    }
    case 'one of': {
      const wanted = new Set(one.texts);
      return (row) => wanted.has(shown(row));
    }
    case 'from to': {
      const [low, high] = [one.from, one.to].map((text) =>
        numberOf(readTyped(text ?? '', column, context.locale, false)),
      );
      return (row) => {
        const kind = range.kinds[row];
        if (kind !== Kind.number && kind !== Kind.date) return false;
        const value = range.numbers[row]!;
        return (low === undefined || value >= low) && (high === undefined || value <= high);
      };
    }
    case 'blank':
      return (row) => range.kinds[row] === Kind.blank && cells.kinds[row] !== CellKind.held;
    case 'filled':
      return (row) => range.kinds[row] !== Kind.blank || cells.kinds[row] === CellKind.held;
    case 'held':
      return (row) => cells.kinds[row] === CellKind.held;
    case 'error':
      return (row) => range.kinds[row] === Kind.error;
    case 'marked': {
      const marks = marksOfSheet(context.book, sheetId).find((own) => own.column === column.id);
      const ruled = ruledRows(context, sheetId, column.id, marks?.rules ?? none).shown;
      return (row) => ruled[row] !== 0;
    }
    case 'own value':
      return (row) => column.formula !== undefined && cells.kinds[row] !== CellKind.blank;
  }
}

function numberOf(cell: Cell): number | undefined {
  if (typeof cell === 'number') return cell;
  return cell !== null && typeof cell === 'object' && 'date' in cell ? cell.date : undefined;
}
