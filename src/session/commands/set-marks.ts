import { columnOf, sheetOf } from '../../book/book.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import { failed, marksDraft } from '../marks/draft.ts';
import { marksRecord, marksToChange } from '../marks/mark-record.ts';
import { marksFrom } from '../marks/tried-marks.ts';
import { defineCommand } from './define.ts';
import { columnId, sheetId } from './shared.ts';

/** Gives a column its marks, in place of those it has; null takes them away. Numbers are typed in the column's unit. */
export const setMarks = defineCommand({
  id: 'set-marks',
  schema: z.strictObject({ sheet: sheetId, column: columnId, marks: marksDraft.nullable() }),
  plan(state, { sheet, column: id, marks: draft }) {
    const column = columnOf(sheetOf(state.book, sheet), id);
    const before = marksToChange(state.book, sheet);
    const made = draft && marksFrom(state, sheet, id, draft);
    if (made && failed(made)) refuse(made.sentence);
    const place = before.findIndex((one) => one.column === id);
    const after = before.filter((one) => one.column !== id);
    if (made && !failed(made)) after.splice(place < 0 ? after.length : place, 0, made);
    const value = marksRecord(after);
    return {
      edit: { do: 'set-part', part: 'marks', key: sheet, value },
      words: `${draft ? 'Change' : 'Remove'} the marks on ${column.label || column.name}`,
    };
  },
});
