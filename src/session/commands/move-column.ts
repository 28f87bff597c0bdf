import { columnOf, sheetOf } from '../../book/book.ts';
import { z } from '../../book/zod.ts';
import { followReferences } from '../follow-references.ts';
import { defineCommand } from './define.ts';
import { columnId, sheetId, together } from './shared.ts';

/** Moves a column to a place, counted without it. */
export const moveColumn = defineCommand({
  id: 'move-column',
  schema: z.strictObject({ sheet: sheetId, column: columnId, index: z.int().min(0) }),
  plan(state, { sheet: id, column: ofId, index }) {
    const sheet = sheetOf(state.book, id);
    const column = columnOf(sheet, ofId);
    const from = sheet.columns.indexOf(column);
    const to = Math.min(index, sheet.columns.length - 1);
    const place = (c: number): number => {
      if (c === from) return to;
      const without = c < from ? c : c - 1;
      return without < to ? without : without + 1;
    };
    const { edits } = followReferences(state.book, { is: 'move-columns', sheet: id, letters: place });
    return {
      edit: together([...edits, { do: 'move-column', sheet: id, column: ofId, index: to }]),
      words: `Move column ${column.label}`,
    };
  },
});
