import { nameKey } from '../../book/names.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import { followReferences } from '../follow-references.ts';
import { defineCommand } from './define.ts';
import { lostInWords, together } from './shared.ts';

/** Takes a cell's name away; the cell stays. Formulas that used the name say #REF!. */
export const removeName = defineCommand({
  id: 'remove-name',
  schema: z.strictObject({ name: z.string() }),
  plan(state, { name: from }) {
    const { book } = state;
    const { name } = book.names.get(nameKey(from)) ?? refuse(`There is no cell named "${from}".`);
    const followed = followReferences(book, { is: 'remove-cell', name });
    const note = lostInWords(followed);
    return {
      edit: together([...followed.edits, { do: 'set-name', name, target: null }]),
      words: `Take the name ${name} away`,
      ...(note === undefined ? {} : { note }),
    };
  },
});
