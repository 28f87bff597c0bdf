import { sheetOf } from '../../book/book.ts';
import type { Edit } from '../../book/edit.ts';
import { withUnit } from '../../book/setting-unit.ts';
import { z } from '../../book/zod.ts';
import { hasUnit } from '../text/setting.ts';
import { defineCommand } from './define.ts';
import { cellsInWords, columnId, columnsById, count, row, sheetId, together } from './shared.ts';

/** Empties cells; under a column formula they show its result again. */
export const clearCells = defineCommand({
  id: 'clear-cells',
  schema: z.strictObject({ sheet: sheetId, row, rows: count, columns: z.array(columnId).min(1) }),
  plan(state, { sheet: id, row, rows, columns: ids }) {
    const sheet = sheetOf(state.book, id);
    const columns = columnsById(sheet, ids);
    const many = Math.max(0, Math.min(rows, sheet.rows - row));
    const blank = new Array<null>(many).fill(null);
    // A setting that is empty has no unit either.
    const units = [...state.book.names.values()]
      .filter((named) => named.sheet === id && ids.includes(named.column))
      .filter((named) => named.row >= row && named.row < row + many && !hasUnit(named, null))
      .map((named): Edit => ({ do: 'set-name', name: named.name, target: withUnit(named, null) }));
    const put: Edit = { do: 'put-cells', sheet: id, row, columns: ids, cells: ids.map(() => blank) };
    return {
      edit: units.length > 0 ? together([put, ...units]) : put,
      words: `Clear ${cellsInWords(columns, row, rows)}`,
    };
  },
});
