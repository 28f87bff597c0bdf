import { sheetOf } from '../../book/book.ts';
import { z } from '../../book/zod.ts';
import { loseSheet } from '../../calc/index.ts';
import { losingMarks } from '../marks/follow.ts';
import { rewriteFormulas } from '../rewriting.ts';
import { losingView } from '../sheet-view-follow.ts';
import { defineCommand } from './define.ts';
import { plural, sheetId, together } from './shared.ts';

/** Removes a sheet. Formulas elsewhere that used it say #REF! with its name. */
export const removeSheet = defineCommand({
  id: 'remove-sheet',
  schema: z.strictObject({ sheet: sheetId }),
  plan(state, { sheet: id }) {
    const { book } = state;
    const sheet = sheetOf(book, id);
    const { edits, count } = rewriteFormulas(book, (formula, home) =>
      home.sheet === id ? formula : loseSheet(formula, book, home.sheet, id),
    );
    return {
      edit: together([
        ...losingView(
          book,
          losingMarks(book, edits, (of) => of === id),
          id,
        ),
        { do: 'remove-sheet', sheet: id },
      ]),
      words: `Remove sheet ${sheet.label}`,
      ...(count
        ? { note: `${plural(count, 'formula')} used it and ${count === 1 ? 'says' : 'say'} #REF! now.` }
        : {}),
    };
  },
});
