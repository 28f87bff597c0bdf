import { nameKey } from '../../book/names.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import { renameNamed } from '../../calc/index.ts';
import { rewriteFormulas } from '../rewriting.ts';
import { defineCommand } from './define.ts';
import { checkCellName, plural, together } from './shared.ts';

/** Gives a named cell another name, in every formula too. */
export const renameName = defineCommand({
  id: 'rename-name',
  schema: z.strictObject({ name: z.string(), to: z.string() }),
  plan(state, { name: from, to }) {
    const { book } = state;
    const named = book.names.get(nameKey(from)) ?? refuse(`There is no cell named "${from}".`);
    checkCellName(state, to, named.name);
    const { name, ...target } = named;
    const { edits, count } = rewriteFormulas(book, (f, home) => renameNamed(f, book, home.sheet, name, to));
    return {
      edit: together([
        ...edits,
        { do: 'set-name', name, target: null },
        { do: 'set-name', name: to, target },
      ]),
      words: `Rename ${name} to ${to}`,
      ...(count ? { note: `${plural(count, 'formula')} now ${count === 1 ? 'says' : 'say'} ${to}.` } : {}),
    };
  },
});
