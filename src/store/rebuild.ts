/** Rebuilds a book from its snapshot and the entries after it. */
import { applyEdit } from '../book/apply.ts';
import { createBook, type LiveBook } from '../book/book.ts';
import { History } from '../book/history.ts';
import { readPast } from './past.ts';
import type { Recovered } from './recover.ts';

export interface Rebuilt {
  readonly book: LiveBook;
  /** What can be undone and redone in it. */
  readonly history: History;
  /** Entries at the end that could not be done again. */
  readonly undone: number;
  readonly notes: readonly string[];
}

/** The book that a snapshot and the entries after it make, with its undo. Never throws. */
export function rebuild({
  content,
  past,
  entries,
}: Pick<Recovered, 'content' | 'past' | 'entries'>): Rebuilt {
  const notes: string[] = [];
  let book = createBook();
  try {
    if (content) applyEdit(book, content);
  } catch (reason) {
    notes.push(`The saved copy of this book cannot be opened (${message(reason)}), so the book opens empty.`);
    book = createBook();
    return { book, history: new History(), undone: entries.length, notes };
  }
  const history = new History(readPast(past));
  for (const [done, { kind, words, edit }] of entries.entries()) {
    try {
      history.replay(kind, words, applyEdit(book, edit).inverse);
    } catch (reason) {
      const undone = entries.length - done;
      notes.push(
        `The change “${words}” could not be done again (${message(reason)}); it and what came after it, ${undone} in all, are lost.`,
      );
      return { book, history, undone, notes };
    }
  }
  return { book, history, undone: 0, notes };
}

const message = (reason: unknown): string =>
  (reason instanceof Error ? reason.message : String(reason)).slice(0, 200);
