import { nameKey } from '../../book/names.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import { signOf } from '../../units/sign.ts';
import { followReferences } from '../follow-references.ts';
import { defineCommand } from './define.ts';
import { lostInWords, together } from './shared.ts';

/** Takes a cell's name away; the cell stays. Formulas that used the name say #REF!. */
export const removeName = defineCommand({
  id: 'remove-name',
  schema: z.strictObject({ name: z.string() }),
  plan(state, { name: from }) {
    const { book } = state;
    const named = book.names.get(nameKey(from)) ?? refuse(`There is no setting "${from}".`);
    const { name } = named;
    const followed = followReferences(book, { is: 'remove-cell', name });
    const { dimension, per } = named;
    const unit = signOf({ dimension, per });
    // A cell without a name has no unit of its own.
    const bare = unit === '' ? undefined : `The cell now has a plain number: its value in ${unit}.`;
    const note = [lostInWords(followed), bare].filter(Boolean).join(' ');
    return {
      edit: together([...followed.edits, { do: 'set-name', name, target: null }]),
      words: `Remove the setting ${name}`,
      ...(note === '' ? {} : { note }),
    };
  },
});
