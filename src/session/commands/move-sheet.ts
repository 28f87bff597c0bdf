import { sheetOf } from '../../book/book.ts';
import { z } from '../../book/zod.ts';
import { defineCommand } from './define.ts';
import { sheetId } from './shared.ts';

/** Moves a sheet to a place, counted without it. */
export const moveSheet = defineCommand({
  id: 'move-sheet',
  schema: z.strictObject({ sheet: sheetId, index: z.int().min(0) }),
  plan(state, { sheet: id, index }) {
    const sheet = sheetOf(state.book, id);
    const to = Math.min(index, state.book.sheets.length - 1);
    return { edit: { do: 'move-sheet', sheet: id, index: to }, words: `Move sheet ${sheet.label}` };
  },
});
