import { nameKey } from '../../book/names.ts';
import { refuse } from '../../book/refusal.ts';
import { cellRoleAfter } from '../../book/roles/cell-in-role.ts';
import { z } from '../../book/zod.ts';
import { followReferences } from '../follow-references.ts';
import { defineCommand } from './define.ts';
import { checkCellName, renamedInWords, together } from './shared.ts';

/** Gives a named cell another name, in every formula too. */
export const renameName = defineCommand({
  id: 'rename-name',
  schema: z.strictObject({ name: z.string(), to: z.string() }),
  plan(state, { name: from, to }) {
    const { book } = state;
    const named = book.names.get(nameKey(from)) ?? refuse(`There is no setting "${from}".`);
    checkCellName(state, to, named.name);
    const { name, role: _, ...target } = named;
    const role = cellRoleAfter(named, to);
    const followed = followReferences(book, { is: 'rename-cell', name, to });
    const note = renamedInWords(followed, to);
    return {
      edit: together([
        ...followed.edits,
        { do: 'set-name', name, target: null },
        { do: 'set-name', name: to, target: role === undefined ? target : { ...target, role } },
      ]),
      words: `Rename the setting ${name} to ${to}`,
      ...(note === undefined ? {} : { note }),
    };
  },
});
