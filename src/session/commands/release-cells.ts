import { sheetOf } from '../../book/book.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import { defineCommand } from './define.ts';
import { cellsInWords, columnId, columnsById, count, row, sheetId } from './shared.ts';

/** Gives cells that hold something of their own back to the formula of their column. */
export const releaseCells = defineCommand({
  id: 'release-cells',
  schema: z.strictObject({ sheet: sheetId, row, rows: count, columns: z.array(columnId).min(1) }),
  plan(state, { sheet: id, row, rows, columns: ids }) {
    const sheet = sheetOf(state.book, id);
    const columns = columnsById(sheet, ids).filter((c) => c.formula !== undefined);
    if (columns.length === 0) refuse('No selected column has a column formula to restore.');
    const many = Math.max(0, Math.min(rows, sheet.rows - row));
    const blank = new Array<null>(many).fill(null);
    return {
      edit: {
        do: 'put-cells',
        sheet: id,
        row,
        columns: columns.map((c) => c.id),
        cells: columns.map(() => blank),
      },
      words: `Restore the column formula in ${cellsInWords(columns, row, rows)}`,
    };
  },
});
