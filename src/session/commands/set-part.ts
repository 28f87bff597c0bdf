import { jsonProblem } from '../../book/json.ts';
import { type Json, type PartName, partNames } from '../../book/model.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import { bookParts } from '../book-parts.ts';
import { defineCommand } from './define.ts';

/** What the record under a key is called. */
const wordFor = (part: PartName, key: string): string =>
  bookParts.find((one) => one.part === part && (one.key ?? key) === key)?.word ??
  (part === 'settings' ? 'setting' : 'record');

/** Puts a record into one of the book's collections, or takes it out (null). `words` names it for undo. */
export const setPart = defineCommand({
  id: 'set-part',
  schema: z.strictObject({
    part: z.enum(partNames),
    key: z.string().min(1).max(200),
    value: z.custom<Json>(() => true),
    words: z.string().max(100).optional(),
  }),
  plan(state, { part, key, value, words }) {
    const wrong =
      key === '__proto__' ? { path: key, problem: 'a key that no record may have' } : jsonProblem(value);
    if (wrong) refuse(`This record cannot be saved: ${wrong.path || 'it'} is ${wrong.problem}.`);
    const verb = value === null ? 'Remove' : state.book.parts[part].has(key) ? 'Change' : 'Add';
    return { edit: { do: 'set-part', part, key, value }, words: words ?? `${verb} a ${wordFor(part, key)}` };
  },
});
