import { sheetOf } from '../../book/book.ts';
import { z } from '../../book/zod.ts';
import { defineCommand } from './define.ts';
import { cellsInWords, columnId, columnsById, count, row, sheetId } from './shared.ts';

/** Empties cells; under a column formula they show its result again. */
export const clearCells = defineCommand({
  id: 'clear-cells',
  schema: z.strictObject({ sheet: sheetId, row, rows: count, columns: z.array(columnId).min(1) }),
  plan(state, { sheet: id, row, rows, columns: ids }) {
    const sheet = sheetOf(state.book, id);
    const columns = columnsById(sheet, ids);
    const many = Math.max(0, Math.min(rows, sheet.rows - row));
    const blank = new Array<null>(many).fill(null);
    return {
      edit: { do: 'put-cells', sheet: id, row, columns: ids, cells: ids.map(() => blank) },
      words: `Clear ${cellsInWords(columns, row, rows)}`,
    };
  },
});
