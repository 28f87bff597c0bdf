import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import { doubtsOf } from '../checks/doubts.ts';
import { defineCommand } from './define.ts';

/** Accepts a doubt with a reason that the book keeps, or takes that back (null). */
export const acceptDoubt = defineCommand({
  id: 'accept-doubt',
  schema: z.strictObject({
    key: z.string().min(1).max(200),
    reason: z.string().max(500).nullable(),
    on: z.iso.date().optional(),
  }),
  plan(state, { key, reason, on }) {
    if (reason === null) {
      if (!state.book.parts.accepted.has(key)) refuse('This check is not accepted.');
      return { edit: { do: 'set-part', part: 'accepted', key, value: null }, words: 'Reopen' };
    }
    const text = reason.trim();
    if (text === '') refuse('Give a reason in a few words. The book saves it for later readers.');
    const doubt = doubtsOf(state).find((one) => one.key === key);
    if (!doubt) refuse('This check no longer applies.');
    return {
      edit: {
        do: 'set-part',
        part: 'accepted',
        key,
        value: { reason: text, sentence: doubt.sentence, ...(on === undefined ? {} : { on }) },
      },
      words: 'Accept a check',
    };
  },
});
