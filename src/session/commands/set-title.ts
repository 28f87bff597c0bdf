/** The command that gives the book another title. */
import { z } from '../../book/zod.ts';
import { defineCommand } from './define.ts';

export const setTitle = defineCommand({
  id: 'set-title',
  schema: z.strictObject({ title: z.string().max(300) }),
  plan: (_, { title }) => ({
    edit: { do: 'set-title', title: title.trim() || 'New book' },
    words: 'Rename the book',
  }),
});
