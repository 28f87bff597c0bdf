import type { LiveBook } from '../../book/book.ts';
import type { Edit } from '../../book/edit.ts';
import type { z } from '../../book/zod.ts';
import type { Calculation } from '../../calc/api.ts';
import type { Locale } from '../../units/locale.ts';

/** What a command may look at while it plans. It changes nothing itself. */
export interface State {
  readonly book: LiveBook;
  readonly calculation: Calculation;
  readonly locale: Locale;
}

/** What a command will do. */
export interface Planned {
  readonly edit: Edit;
  /** For undo and redo: "Change femur of row 3". */
  readonly words: string;
  /** What the user should know besides: "3 formulas now say thigh". */
  readonly note?: string;
  /** What else in the book loses something by it: to be said before it is done. */
  readonly loses?: string;
}

/**
 * One thing a user can do to a book. Page, command line and tests send `{ do: id, … }`; undo is made from the edit, so a
 * command needs no code for it. `plan` throws a `Refusal` with one sentence when it cannot be done.
 */
export interface CommandRecord<K extends string = string, P = never> {
  readonly id: K;
  readonly schema: z.ZodType<P>;
  readonly plan: (state: State, payload: P) => Planned;
}

export const defineCommand = <const K extends string, P>(record: CommandRecord<K, P>): CommandRecord<K, P> =>
  record;
