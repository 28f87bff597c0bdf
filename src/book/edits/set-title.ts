/** The edit that gives the book another title; undone by the title before. */
import type { LiveBook } from '../book.ts';
import type { Applied, EditOf } from '../edit.ts';
import { checkTitle } from './limits.ts';

export function setTitle(book: LiveBook, edit: EditOf<'set-title'>): Applied {
  checkTitle(edit.title);
  const title = book.title;
  book.title = edit.title;
  return { inverse: { do: 'set-title', title }, changes: [] };
}
