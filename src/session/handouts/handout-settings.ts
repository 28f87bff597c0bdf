import type { Book } from '../../book/model.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';

/**
 * One sentence of a handout: `when` is a formula in the book's language, computed in the athlete's row; where it is true
 * the sentence is said, its {places} filled with the values of columns of that row or of named cells.
 */
const handoutRule = z.strictObject({
  part: z.enum(['finding', 'try']),
  when: z.string().min(1).max(2000),
  say: z.string().min(1).max(1000),
});
export type HandoutRule = z.infer<typeof handoutRule>;

export const handoutParts = ['figure', 'numbers', 'observed', 'findings', 'try', 'retest'] as const;
export type HandoutPart = (typeof handoutParts)[number];
const papers = ['a4', 'letter'] as const;
export type Paper = (typeof papers)[number];

const numberLine = z.strictObject({
  column: z.string().min(1).max(200),
  /** What the number may be off by, in the unit of calculation: a formula computed in the row. */
  error: z.string().min(1).max(2000).optional(),
});
export type NumberLine = z.infer<typeof numberLine>;

/** How a book's handouts are made: the record `settings` of its part `handouts`. What is left out is as usual. */
export const handoutSettings = z.strictObject({
  /** Name of the sheet with one row an athlete. */
  sheet: z.string().max(200).optional(),
  parts: z.array(z.enum(handoutParts)).max(20).optional(),
  numbers: z.array(numberLine).max(30).optional(),
  rules: z.array(handoutRule).max(200).optional(),
  /** Weeks from the test to the next one; 0 for no date. */
  retestWeeks: z.number().min(0).max(520).optional(),
  /** Column with the date of the test. */
  tested: z.string().max(200).optional(),
  /** Stands at the foot of the page: who to ask. */
  contact: z.string().max(300).optional(),
});
export type HandoutSettings = z.infer<typeof handoutSettings>;

/** A {place} of a rule's sentence. */
export const placePattern = /\{([^{}]{1,200})\}/g;

export const settingsKey = 'settings';

/** @throws Refusal for a record that cannot be read */
export function handoutSettingsOf(book: Book): HandoutSettings {
  const kept = book.parts.handouts.get(settingsKey);
  if (kept === undefined) return {};
  const read = handoutSettings.safeParse(kept);
  if (read.success) return read.data;
  const [issue] = read.error.issues;
  return refuse(
    `The book's settings for handouts cannot be read at "${issue?.path.join('.')}": ${issue?.message}. Edit or remove them.`,
  );
}
