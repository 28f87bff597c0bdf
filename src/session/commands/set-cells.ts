import { sheetOf } from '../../book/book.ts';
import { type Cell, CellKind } from '../../book/cells.ts';
import type { Edit } from '../../book/edit.ts';
import { limits } from '../../book/file-frame.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import { isUnchanged, readTyped } from '../typed.ts';
import { defineCommand } from './define.ts';
import { cellsInWords, columnId, columnsById, plural, row, sheetId, together } from './shared.ts';

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
    const sheet = sheetOf(state.book, id);
    const columns = columnsById(sheet, ids);
    if (texts.some((line) => line.length > columns.length))
      refuse(
        `The block is wider than the ${plural(columns.length, 'column')} that it would go to. Add columns first.`,
      );
    const end = row + texts.length;
    if (end > limits.rows) refuse(`A sheet has at most ${limits.rows} rows.`);
    let held = 0;
    const cells = columns.map((column, k) => {
      const own = sheet.cells.get(column.id)!;
      return texts.map((line, i): Cell => {
        const at = row + i;
        const text = line[k];
        if (text === undefined) return at < sheet.rows ? own.get(at) : null;
        if (
          at < sheet.rows &&
          isUnchanged(text, own.get(at), own.kinds[at] ?? CellKind.blank, column, state.locale)
        )
          return own.get(at);
        const cell = readTyped(text, column, state.locale, formulas);
        if (cell !== null && typeof cell === 'object' && 'held' in cell) held++;
        return cell;
      });
    });
    const edits: Edit[] = [{ do: 'put-cells', sheet: id, row, columns: ids, cells }];
    if (end > sheet.rows)
      edits.unshift({ do: 'add-rows', sheet: id, row: sheet.rows, count: end - sheet.rows });
    return {
      edit: together(edits),
      words: `Change ${cellsInWords(columns, row, texts.length)}`,
      ...(held
        ? { note: `${plural(held, 'text')} did not fit the column and ${held === 1 ? 'is' : 'are'} held.` }
        : {}),
    };
  },
});
