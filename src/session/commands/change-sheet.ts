import { sheetOf } from '../../book/book.ts';
import type { Edit } from '../../book/edit.ts';
import { z } from '../../book/zod.ts';
import { followReferences } from '../follow-references.ts';
import { purpose } from './add-sheet.ts';
import { defineCommand } from './define.ts';
import { checkSheetName, renamedInWords, sheetId, together } from './shared.ts';

/** Changes name, label, purpose or note of a sheet. A new name goes into everything that names it. */
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
    const followed = renamed
      ? followReferences(book, { is: 'rename-sheet', sheet: id, to: name })
      : undefined;
    const said = followed && renamedInWords(followed, name);
    const note = change.note === undefined ? sheet.note : (change.note ?? undefined);
    const edit: Edit = {
      do: 'change-sheet',
      sheet: id,
      name,
      label: change.label ?? (sheet.label === sheet.name ? name : sheet.label),
      purpose: change.purpose ?? sheet.purpose,
      ...(note ? { note } : {}),
    };
    return {
      edit: together([...(followed?.edits ?? []), edit]),
      words: renamed ? `Rename sheet ${sheet.name} to ${name}` : `Change sheet ${sheet.label}`,
      ...(said === undefined ? {} : { note: said }),
    };
  },
});
