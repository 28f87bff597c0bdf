/** The command that removes every small copy of a picture from the book. */
import type { Edit } from '../../book/edit.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import { defineCommand } from './define.ts';
import { together } from './shared.ts';

/** Copies whose rows are gone go too. */
export const removeCopies = defineCommand({
  id: 'remove-copies',
  schema: z.strictObject({}) as z.ZodType<object>,
  plan({ book }) {
    const keys = [...book.parts.pictures.keys()];
    if (keys.length === 0) refuse('The book has no copies of pictures.');
    return {
      edit: together(keys.map((key): Edit => ({ do: 'set-part', part: 'pictures', key, value: null }))),
      words: 'Remove all copies of pictures',
    };
  },
});
