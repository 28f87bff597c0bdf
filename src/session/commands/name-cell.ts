import { columnOf, sheetOf } from '../../book/book.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import { defineCommand } from './define.ts';
import { checkCellName, columnId, row, sheetId } from './shared.ts';

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
    columnOf(sheet, place.column);
    if (place.row >= sheet.rows) refuse(`The sheet "${sheet.name}" has no row ${place.row + 1}.`);
    checkCellName(state, name);
    const other = [...state.book.names.values()].find(
      (n) => n.sheet === place.sheet && n.column === place.column && n.row === place.row,
    );
    if (other) refuse(`This cell is named "${other.name}" already. Rename it instead.`);
    return {
      edit: { do: 'set-name', name, target: note === undefined ? place : { ...place, note } },
      words: `Name a cell ${name}`,
    };
  },
});
