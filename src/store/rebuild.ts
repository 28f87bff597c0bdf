import { applyEdit } from '../book/apply.ts';
import { createBook, type LiveBook } from '../book/book.ts';
import type { Edit } from '../book/edit.ts';
import type { Entry } from './entry.ts';
import type { Recovered } from './recover.ts';

/** A change that was done again, with the edit that takes it back: from these a history is made. */
export interface Step extends Pick<Entry, 'kind' | 'words'> {
  readonly inverse: Edit;
}

export interface Rebuilt {
  readonly book: LiveBook;
  readonly steps: readonly Step[];
  /** Entries at the end that could not be done again. */
  readonly undone: number;
  readonly notes: readonly string[];
}

/** The book that a snapshot and the entries after it make. Never throws. */
export function rebuild({ content, entries }: Pick<Recovered, 'content' | 'entries'>): Rebuilt {
  const notes: string[] = [];
  let book = createBook();
  try {
    if (content) applyEdit(book, content);
  } catch (reason) {
    notes.push(`The stored copy of this book makes no book (${message(reason)}), so it opens empty.`);
    book = createBook();
    return { book, steps: [], undone: entries.length, notes };
  }
  const steps: Step[] = [];
  for (const { kind, words, edit } of entries) {
    try {
      steps.push({ kind, words, inverse: applyEdit(book, edit).inverse });
    } catch (reason) {
      const undone = entries.length - steps.length;
      notes.push(
        `The change “${words}” could not be done again (${message(reason)}); it and what came after it, ${undone} in all, are lost.`,
      );
      return { book, steps, undone, notes };
    }
  }
  return { book, steps, undone: 0, notes };
}

const message = (reason: unknown): string =>
  (reason instanceof Error ? reason.message : String(reason)).slice(0, 200);
