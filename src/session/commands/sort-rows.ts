import { sheetOf } from '../../book/book.ts';
import { z } from '../../book/zod.ts';
import { allRows, byValue, ordered } from '../sheet/order.ts';
import { defineCommand } from './define.ts';
import { reordered } from './reorder.ts';
import { columnId, columnsById, sheetId } from './shared.ts';

/** Puts the rows themselves in order, by one column or by several; rows that are equal in all keep their order. */
export const sortRows = defineCommand({
  id: 'sort-rows',
  schema: z.strictObject({
    sheet: sheetId,
    by: z.array(z.strictObject({ column: columnId, descending: z.boolean().optional() })).min(1),
  }),
  plan(state, { sheet: id, by }) {
    const sheet = sheetOf(state.book, id);
    const columns = columnsById(
      sheet,
      by.map((b) => b.column),
    );
    const keys = by.map(({ column, descending = false }) =>
      byValue(state.calculation.column(id, column), descending),
    );
    const order = ordered(allRows(sheet.rows), keys);
    return {
      edit: reordered(state.book, id, order),
      words: `Sort by ${columns.map((c) => c.label).join(', ')}`,
    };
  },
});
