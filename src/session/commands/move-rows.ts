import { sheetOf } from '../../book/book.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import { defineCommand } from './define.ts';
import { reordered } from './reorder.ts';
import { count, row, rowsInWords, sheetId } from './shared.ts';

/** Moves rows so that the first of them comes to row `to`, counted without them. */
export const moveRows = defineCommand({
  id: 'move-rows',
  schema: z.strictObject({ sheet: sheetId, row, count, to: row }),
  plan(state, { sheet: id, row, count, to }) {
    const { rows, name } = sheetOf(state.book, id);
    if (row + count > rows || to > rows - count)
      refuse(`The sheet "${name}" has ${rows} rows; the selected rows go beyond them.`);
    const others = Array.from({ length: rows - count }, (_, i) => (i < row ? i : i + count));
    const moving = Array.from({ length: count }, (_, i) => row + i);
    const order = Int32Array.from([...others.slice(0, to), ...moving, ...others.slice(to)]);
    return { edit: reordered(state.book, id, order), words: `Move ${rowsInWords(row, count)}` };
  },
});
