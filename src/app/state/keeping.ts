import { effect, signal } from '@preact/signals';
import { askToPersist, clearedNote, persistenceNote, remember } from '../../store/persist.ts';
import type { LibraryBook } from '../../worker/protocol.ts';
import type { Page } from './page.ts';
import { say } from './page.ts';

/** The books that this browser keeps, as last asked. */
export const library = signal<readonly LibraryBook[]>([]);

export async function readLibrary(page: Page): Promise<readonly LibraryBook[]> {
  library.value = await page.service.books();
  remember(localStorage, library.value);
  return library.value;
}

/** What is to be said when books that were here are gone; undefined when all is well. */
export const clearedBooks = (books: readonly LibraryBook[]): string | undefined =>
  clearedNote(localStorage, books);

/** Follows whether the book is kept, and what becomes of it when its worker had to be begun anew. */
export function followKeeping(page: Page): void {
  void page.service.follow((keeping) => {
    page.keeping.value = keeping;
  });
  void page.service.onRestart(({ opened, sentence }) => {
    // What the old worker was at is over, however far it was.
    page.progress.value = null;
    if (opened.ok) page.outline.value = opened.outline;
    say(page, opened.ok ? sentence : `${sentence} ${opened.sentence}`, 'wrong');
  });
  void page.service.onFault((sentence) => say(page, sentence, 'wrong'));
  void page.service.watch(({ about, done, total }) => {
    page.progress.value = total > 0 && done < total ? { about, share: done / total } : null;
  });
  // Asked once, after the first change that is kept: before that there is nothing to lose.
  let asked = false;
  effect(() => {
    const { value } = page.keeping;
    if (asked || value?.state !== 'kept' || value.id === undefined) return;
    asked = true;
    void askToPersist().then((persistence) => {
      const note = persistenceNote(persistence);
      if (note && persistence === 'refused') page.libraryNote.value = note;
    });
  });
}
