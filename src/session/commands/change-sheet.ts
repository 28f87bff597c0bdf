import { sheetOf } from '../../book/book.ts';
import type { Edit } from '../../book/edit.ts';
import { z } from '../../book/zod.ts';
import { renameSheet } from '../../calc/index.ts';
import { renamedInRecipes } from '../recipes.ts';
import { rewriteFormulas } from '../rewriting.ts';
import { purpose } from './add-sheet.ts';
import { defineCommand } from './define.ts';
import { checkSheetName, plural, sheetId, together } from './shared.ts';

/** Changes name, label, purpose or note of a sheet. A new name goes into every formula and recipe that uses it. */
export const changeSheet = defineCommand({
  id: 'change-sheet',
  schema: z.strictObject({
    sheet: sheetId,
    change: z.strictObject({
      name: z.string().optional(),
      label: z.string().max(300).optional(),
      purpose: purpose.optional(),
      note: z.string().nullable().optional(),
    }),
  }),
  plan(state, { sheet: id, change }) {
    const { book } = state;
    const sheet = sheetOf(book, id);
    const name = change.name ?? sheet.name;
    const renamed = name !== sheet.name;
    if (renamed) checkSheetName(state, name, sheet.name);
    const rewritten = renamed
      ? rewriteFormulas(book, (formula, home) => renameSheet(formula, book, home.sheet, id, name))
      : { edits: [], count: 0 };
    const note = change.note === undefined ? sheet.note : (change.note ?? undefined);
    const edit: Edit = {
      do: 'change-sheet',
      sheet: id,
      name,
      label: change.label ?? (sheet.label === sheet.name ? name : sheet.label),
      purpose: change.purpose ?? sheet.purpose,
      ...(note ? { note } : {}),
    };
    const recipes = renamed ? renamedInRecipes(book, { sheet: sheet.name }, name) : [];
    return {
      edit: together([...rewritten.edits, edit, ...recipes]),
      words: renamed ? `Rename sheet ${sheet.name} to ${name}` : `Change sheet ${sheet.label}`,
      ...(rewritten.count
        ? {
            note: `${plural(rewritten.count, 'formula')} now ${rewritten.count === 1 ? 'says' : 'say'} ${name}.`,
          }
        : {}),
    };
  },
});
