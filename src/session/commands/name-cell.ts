import { columnOf, sheetOf } from '../../book/book.ts';
import type { Edit } from '../../book/edit.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import { readTyped } from '../text/typed.ts';
import { defineCommand } from './define.ts';
import { checkCellName, columnId, row, sheetId, together } from './shared.ts';

/** Names a cell, so that formulas can use its value by name. */
export const nameCell = defineCommand({
  id: 'name-cell',
  schema: z.strictObject({
    sheet: sheetId,
    column: columnId,
    row,
    name: z.string(),
    note: z.string().max(2_000).optional(),
  }),
  plan(state, { name, note, ...place }) {
    const sheet = sheetOf(state.book, place.sheet);
    const column = columnOf(sheet, place.column);
    if (place.row >= sheet.rows) refuse(`The sheet "${sheet.name}" has no row ${place.row + 1}.`);
    checkCellName(state, name);
    const other = [...state.book.names.values()].find(
      (n) => n.sheet === place.sheet && n.column === place.column && n.row === place.row,
    );
    if (other) refuse(`This cell is named "${other.name}" already. Rename it instead.`);
    const naming: Edit = { do: 'set-name', name, target: note === undefined ? place : { ...place, note } };
    // A date that did not fit the column before is one as a setting.
    const held = sheet.cells.get(column.id)!.held.get(place.row);
    const now = held ? readTyped(held.held, column, state.locale, false, true) : null;
    const dated = now !== null && typeof now === 'object' && 'date' in now;
    const put: Edit = {
      do: 'put-cells',
      sheet: place.sheet,
      row: place.row,
      columns: [column.id],
      cells: [[now]],
    };
    return {
      edit: dated ? together([naming, put]) : naming,
      words: `Name a cell ${name}`,
    };
  },
});
