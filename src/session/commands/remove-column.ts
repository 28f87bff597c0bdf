import { columnOf, sheetOf } from '../../book/book.ts';
import { z } from '../../book/zod.ts';
import { loseColumn } from '../../calc/index.ts';
import { losingMarks } from '../marks/follow.ts';
import { movedColumns, rewriteFormulas } from '../rewriting.ts';
import { losingInView } from '../sheet-view-follow.ts';
import { defineCommand } from './define.ts';
import { columnId, plural, sheetId, together } from './shared.ts';

/** Removes a column. Formulas that used it say #REF! with its name. */
export const removeColumn = defineCommand({
  id: 'remove-column',
  schema: z.strictObject({ sheet: sheetId, column: columnId }),
  plan(state, { sheet: id, column: ofId }) {
    const { book } = state;
    const sheet = sheetOf(book, id);
    const column = columnOf(sheet, ofId);
    const gone = sheet.columns.indexOf(column);
    const letters = movedColumns(book, id, (c) => (c < gone ? c : c === gone ? undefined : c - 1));
    const lost = rewriteFormulas(book, (formula, home) => loseColumn(formula, book, home.sheet, id, ofId));
    const { edits } = rewriteFormulas(book, (formula, home) =>
      loseColumn(letters(formula, home), book, home.sheet, id, ofId),
    );
    return {
      edit: together([
        ...losingInView(
          book,
          losingMarks(book, edits, (of, one) => of === id && one === ofId),
          id,
          ofId,
        ),
        { do: 'remove-column', sheet: id, column: ofId },
      ]),
      words: `Remove column ${column.label}`,
      ...(lost.count
        ? {
            note: `${plural(lost.count, 'formula')} used it and ${lost.count === 1 ? 'says' : 'say'} #REF! now.`,
          }
        : {}),
    };
  },
});
