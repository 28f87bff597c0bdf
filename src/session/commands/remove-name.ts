import { nameKey } from '../../book/names.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import { loseNamed } from '../../calc/index.ts';
import { rewriteFormulas } from '../rewriting.ts';
import { defineCommand } from './define.ts';
import { plural, together } from './shared.ts';

/** Takes a cell's name away; the cell stays. Formulas that used the name say #REF!. */
export const removeName = defineCommand({
  id: 'remove-name',
  schema: z.strictObject({ name: z.string() }),
  plan(state, { name: from }) {
    const { book } = state;
    const { name } = book.names.get(nameKey(from)) ?? refuse(`There is no cell named "${from}".`);
    const { edits, count } = rewriteFormulas(book, (f, home) => loseNamed(f, book, home.sheet, name));
    return {
      edit: together([...edits, { do: 'set-name', name, target: null }]),
      words: `Take the name ${name} away`,
      ...(count
        ? { note: `${plural(count, 'formula')} used it and ${count === 1 ? 'says' : 'say'} #REF! now.` }
        : {}),
    };
  },
});
