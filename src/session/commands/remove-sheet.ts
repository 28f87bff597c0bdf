import { sheetOf } from '../../book/book.ts';
import { z } from '../../book/zod.ts';
import { followReferences } from '../follow-references.ts';
import { defineCommand } from './define.ts';
import { lostInWords, sheetId, together, wouldLoseInWords } from './shared.ts';

/** Removes a sheet. Formulas elsewhere that used it say #REF! with its name. */
export const removeSheet = defineCommand({
  id: 'remove-sheet',
  schema: z.strictObject({ sheet: sheetId }),
  plan(state, { sheet: id }) {
    const { book } = state;
    const sheet = sheetOf(book, id);
    const followed = followReferences(book, { is: 'remove-sheet', sheet: id });
    const note = lostInWords(followed);
    const loses = wouldLoseInWords(followed);
    return {
      edit: together([...followed.edits, { do: 'remove-sheet', sheet: id }]),
      words: `Delete sheet ${sheet.label}`,
      ...(note === undefined ? {} : { note }),
      ...(loses === undefined ? {} : { loses }),
    };
  },
});
