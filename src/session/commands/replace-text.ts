import { sheetOf } from '../../book/book.ts';
import type { Edit } from '../../book/edit.ts';
import { refuse } from '../../book/refusal.ts';
import { columnAt } from '../../book/setting-unit.ts';
import { z } from '../../book/zod.ts';
import { matcher } from '../sheet/find.ts';
import { readTyped, typedText, valueText } from '../text/typed.ts';
import { defineCommand } from './define.ts';
import { columnId, columnsById, plural, row, sheetId, together } from './shared.ts';

/** Replaces a text in what was typed or imported, and in formulas of single cells; results of column formulas stay. */
export const replaceText = defineCommand({
  id: 'replace-text',
  schema: z.strictObject({
    sheet: sheetId,
    columns: z.array(columnId).optional(),
    find: z.string().min(1).max(1_000),
    put: z.string().max(1_000),
    matchCase: z.boolean().optional(),
    whole: z.boolean().optional(),
    /** Rows that a filter shows, by index; all where it is left out. */
    rows: z.array(row).optional(),
  }),
  plan(state, { sheet: id, columns, find, put, matchCase = false, whole = false, rows }) {
    const sheet = sheetOf(state.book, id);
    const matches = matcher({ text: find, matchCase, whole });
    const pattern = new RegExp(find.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'), matchCase ? 'gu' : 'giu');
    const edits: Edit[] = [];
    const among = rows && new Set(rows);
    let count = 0;
    for (const column of columns ? columnsById(sheet, columns) : sheet.columns) {
      const cells = sheet.cells.get(column.id)!;
      for (let at = 0; at < sheet.rows; at++) {
        if (among && !among.has(at)) continue;
        const cell = cells.get(at);
        if (cell === null) continue;
        const formula = typeof cell === 'object' && 'formula' in cell;
        const as = columnAt(state.book, { sheet: id, row: at }, column);
        const text = formula ? typedText(cell, as, state.locale) : valueText(cell, as, state.locale);
        if (!matches(text)) continue;
        // Only what was a formula can be one afterwards: no imported text turns into one here.
        const now = readTyped(whole ? put : text.replace(pattern, () => put), as, state.locale, formula);
        edits.push({ do: 'put-cells', sheet: id, row: at, columns: [column.id], cells: [[now]] });
        count++;
      }
    }
    if (count === 0) refuse(`"${find}" is not in any cell here that can be changed.`);
    return {
      edit: together(edits),
      words: `Replace ${find} in ${plural(count, 'cell')}`,
      note: `Replaced in ${plural(count, 'cell')}.`,
    };
  },
});
