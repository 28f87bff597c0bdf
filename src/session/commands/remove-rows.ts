import { sheetOf } from '../../book/book.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import { followReferences } from '../follow-references.ts';
import { defineCommand } from './define.ts';
import { count, row, rowsInWords, sheetId, together } from './shared.ts';

/** Removes rows; addresses of what stood there become #REF!. */
export const removeRows = defineCommand({
  id: 'remove-rows',
  schema: z.strictObject({ sheet: sheetId, row, count }),
  plan(state, { sheet: id, row, count: asked }) {
    const sheet = sheetOf(state.book, id);
    const count = Math.min(asked, sheet.rows - row);
    if (count <= 0) refuse(`The sheet "${sheet.name}" has no row ${row + 1}.`);
    const to = (r: number) => (r < row ? r : r < row + count ? undefined : r - count);
    const rewritten = followReferences(state.book, { is: 'move-rows', sheet: id, rows: to });
    return {
      edit: together([...rewritten.edits, { do: 'remove-rows', sheet: id, row, count }]),
      words: `Delete ${rowsInWords(row, count)}`,
    };
  },
});
