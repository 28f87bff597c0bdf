import { columnOf, sheetOf } from '../../book/book.ts';
import type { Edit } from '../../book/edit.ts';
import type { NamedCell } from '../../book/model.ts';
import { refuse } from '../../book/refusal.ts';
import { withUnit } from '../../book/setting-unit.ts';
import { z } from '../../book/zod.ts';
import { readSetting } from '../text/setting.ts';
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
    if (other) refuse(`This cell is already named "${other.name}". Rename it instead.`);
    const named: NamedCell = { name, ...place, ...(note === undefined ? {} : { note }) };
    // A date or a unit that did not fit the column before is one as a setting.
    const held = sheet.cells.get(column.id)!.held.get(place.row);
    const now = held ? readSetting(held.held, column, named, state.locale, false) : null;
    const fits = now && !(now.cell !== null && typeof now.cell === 'object' && 'held' in now.cell);
    const naming: Edit = { do: 'set-name', name, target: withUnit(named, now?.unit ?? null) };
    const put: readonly Edit[] = fits
      ? [
          {
            do: 'put-cells',
            sheet: place.sheet,
            row: place.row,
            columns: [column.id],
            cells: [[now.cell]],
          },
        ]
      : [];
    return {
      edit: put.length > 0 ? together([naming, ...put]) : naming,
      words: `Add the setting ${name}`,
    };
  },
});
