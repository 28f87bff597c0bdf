import { columnOf, sheetOf } from '../../book/book.ts';
import { z } from '../../book/zod.ts';
import { followReferences } from '../follow-references.ts';
import { defineCommand } from './define.ts';
import { columnId, lostInWords, sheetId, together, wouldLoseInWords } from './shared.ts';

/** Removes a column. Formulas that used it say #REF! with its name; charts, handouts, report and import settings say what is gone. */
export const removeColumn = defineCommand({
  id: 'remove-column',
  schema: z.strictObject({ sheet: sheetId, column: columnId }),
  plan(state, { sheet: id, column: ofId }) {
    const { book } = state;
    const sheet = sheetOf(book, id);
    const column = columnOf(sheet, ofId);
    const gone = sheet.columns.indexOf(column);
    const followed = followReferences(book, {
      is: 'remove-column',
      sheet: id,
      column: ofId,
      letters: (c) => (c < gone ? c : c === gone ? undefined : c - 1),
    });
    const note = lostInWords(followed);
    const loses = wouldLoseInWords(followed);
    return {
      edit: together([...followed.edits, { do: 'remove-column', sheet: id, column: ofId }]),
      words: `Delete column ${column.label}`,
      ...(note === undefined ? {} : { note }),
      ...(loses === undefined ? {} : { loses }),
    };
  },
});
