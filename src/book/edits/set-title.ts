import type { LiveBook } from '../book.ts';
import type { Applied, EditOf } from '../edit.ts';

export function setTitle(book: LiveBook, edit: EditOf<'set-title'>): Applied {
  const title = book.title;
  book.title = edit.title;
  return { inverse: { do: 'set-title', title }, changes: [] };
}
