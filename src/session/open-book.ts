/** An open book as questions about it see it. */
import type { Book } from '../book/model.ts';
import type { Calculation } from '../calc/api.ts';
import type { Locale } from '../units/locale.ts';

/** What questions about an open book are answered from. */
export interface ReadContext {
  readonly book: Book;
  readonly calculation: Calculation;
  readonly locale: Locale;
}
