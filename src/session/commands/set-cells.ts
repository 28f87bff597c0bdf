import { sheetOf } from '../../book/book.ts';
import { limits } from '../../book/file-frame.ts';
import { z } from '../../book/zod.ts';
import { defineCommand } from './define.ts';
import { heldInWords, putTexts } from './put-texts.ts';
import { cellsInWords, columnId, columnsById, row, sheetId, together } from './shared.ts';

/**
 * Writes typed or pasted texts, row by row, from a row downwards into the columns given. Rows that are not there yet are
 * added. With `formulas: false` (a paste from elsewhere) a text that begins with "=" stays a text.
 */
export const setCells = defineCommand({
  id: 'set-cells',
  schema: z.strictObject({
    sheet: sheetId,
    row,
    columns: z.array(columnId).min(1),
    texts: z.array(z.array(z.string().max(limits.text))).min(1),
    formulas: z.boolean().optional(),
  }),
  plan(state, { sheet: id, row, columns: ids, texts, formulas = true }) {
    const columns = columnsById(sheetOf(state.book, id), ids);
    const { edits, held } = putTexts(state, { sheet: id, row, columns, texts, formulas });
    return {
      edit: together(edits),
      words: `Change ${cellsInWords(columns, row, texts.length)}`,
      ...heldInWords(held),
    };
  },
});
