/** The locale of a book. */
import type { Book } from '../book/model.ts';
import { definePart, pointsAtNothing } from '../book/references/part.ts';
import { z } from '../book/zod.ts';
import type { Locale } from '../units/locale.ts';

const localeSchema = z.object({ decimal: z.enum(['.', ',']), dateOrder: z.enum(['ymd', 'dmy', 'mdy']) });

export const localePart = definePart({
  word: 'setting',
  part: 'settings',
  key: 'locale',
  schema: localeSchema,
  references: pointsAtNothing,
});

/** The book's own way of writing numbers and dates (its setting `locale`), else that of the machine. */
export function localeOf(book: Book, machine: Locale): Locale {
  const own = localeSchema.safeParse(book.parts.settings.get('locale'));
  return own.success ? own.data : machine;
}
