import { columnOf, sheetOf } from '../../book/book.ts';
import { limits } from '../../book/file-frame.ts';
import { properName } from '../../book/names.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import { followReferences } from '../follow-references.ts';
import { defineCommand } from './define.ts';
import { columnId, columnTaken, newId, sheetId, together } from './shared.ts';

/** Puts a copy of a column, with its cells, to the right of it. */
export const duplicateColumn = defineCommand({
  id: 'duplicate-column',
  schema: z.strictObject({ sheet: sheetId, column: columnId }),
  plan(state, { sheet: id, column: ofId }) {
    const sheet = sheetOf(state.book, id);
    if (sheet.columns.length >= limits.columns) refuse(`A sheet has at most ${limits.columns} columns.`);
    const column = columnOf(sheet, ofId);
    const index = sheet.columns.indexOf(column) + 1;
    const cells = sheet.cells.get(ofId)!;
    const name = properName(column.name, columnTaken(state, id));
    const { role: _, ...rest } = column;
    const copy = {
      ...rest,
      id: newId(name, (n) => sheet.columns.some((c) => c.id === n)),
      name,
      label: `${column.label} (copy)`,
    };
    const { edits } = followReferences(state.book, {
      is: 'copy-column',
      sheet: id,
      column: ofId,
      id: copy.id,
      name,
      letters: (c) => (c < index ? c : c + 1),
    });
    const add = { do: 'add-column', sheet: id, index, column: copy } as const;
    return {
      edit: together([...edits, cells.blank ? add : { ...add, cells: cells.block() }]),
      words: `Duplicate column ${column.label}`,
    };
  },
});
