import { columnOf, sheetOf } from '../../book/book.ts';
import type { Edit } from '../../book/edit.ts';
import { limits } from '../../book/file-frame.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import { rowsUnreadable } from '../checks/unreadable-cells.ts';
import { readTyped } from '../text/typed.ts';
import { defineCommand } from './define.ts';
import { columnId, plural, sheetId, together } from './shared.ts';

/** Reads all unreadable cells of a column that have the same text and reason as another text; '' clears them. */
export const readUnreadable = defineCommand({
  id: 'read-unreadable',
  schema: z.strictObject({
    sheet: sheetId,
    column: columnId,
    text: z.string().max(limits.text),
    reason: z.string().max(limits.text),
    as: z.string().max(limits.text),
  }),
  plan({ book, locale }, { sheet: id, column: of, text, reason, as }) {
    const sheet = sheetOf(book, id);
    const column = columnOf(sheet, of);
    const rows = rowsUnreadable(sheet.cells.get(of)!, text, reason);
    if (rows.length === 0) refuse(`No cell of ${column.label} is unreadable as “${text}” any more.`);
    const cell = readTyped(as, column, locale, false);
    if (cell !== null && typeof cell === 'object' && 'held' in cell)
      refuse(`${cell.reason} Nothing was changed.`);
    // One edit for each run of neighbouring rows.
    const runs: { row: number; count: number }[] = [];
    for (const row of rows) {
      const last = runs.at(-1);
      if (last && last.row + last.count === row) last.count++;
      else runs.push({ row, count: 1 });
    }
    const edits = runs.map(
      ({ row, count }): Edit => ({
        do: 'put-cells',
        sheet: id,
        row,
        columns: [of],
        cells: [new Array(count).fill(cell)],
      }),
    );
    const cells = plural(rows.length, 'cell');
    return {
      edit: together(edits),
      words: cell === null ? `Clear ${cells} with “${text}”` : `Read ${cells} with “${text}” as ${as.trim()}`,
    };
  },
});
