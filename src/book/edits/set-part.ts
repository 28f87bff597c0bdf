/** The edit that sets a record of a part of the book; undone by the record before. */
import type { LiveBook } from '../book.ts';
import type { Applied, EditOf } from '../edit.ts';
import { checkPart } from './limits.ts';

export function setPart(book: LiveBook, edit: EditOf<'set-part'>): Applied {
  const records = book.parts[edit.part];
  if (edit.value !== null) checkPart(edit.key, edit.value);
  const before = records.get(edit.key) ?? null;
  if (edit.value === null) records.delete(edit.key);
  else records.set(edit.key, edit.value);
  return { inverse: { ...edit, value: before }, changes: [{ what: 'part', part: edit.part }] };
}
