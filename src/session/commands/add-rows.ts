import { sheetOf } from '../../book/book.ts';
import { limits } from '../../book/file-frame.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import { followReferences } from '../follow-references.ts';
import { defineCommand } from './define.ts';
import { count, plural, row, sheetId, together } from './shared.ts';

/** Adds blank rows before a row, or at the end. */
export const addRows = defineCommand({
  id: 'add-rows',
  schema: z.strictObject({ sheet: sheetId, row: row.optional(), count }),
  plan(state, { sheet: id, row, count }) {
    const sheet = sheetOf(state.book, id);
    const at = Math.min(row ?? sheet.rows, sheet.rows);
    if (sheet.rows + count > limits.rows) refuse(`A sheet has at most ${limits.rows} rows.`);
    const rewritten = followReferences(state.book, {
      is: 'move-rows',
      sheet: id,
      rows: (r) => (r < at ? r : r + count),
    });
    return {
      edit: together([...rewritten.edits, { do: 'add-rows', sheet: id, row: at, count }]),
      words: `Add ${plural(count, 'row')}`,
    };
  },
});
