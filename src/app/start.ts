import { openBundled, samples } from './books/bundled.ts';
import { openKept } from './state/actions.ts';
import { clearedBooks, readLibrary } from './state/keeping.ts';
import type { Page } from './state/page.ts';
import { say } from './state/page.ts';

/** What shows itself when the page opens: the book last worked on, else a sample. */
export async function openFirstBook(page: Page): Promise<void> {
  const books = await readLibrary(page);
  const gone = clearedBooks(books);
  const [last] = books;
  if (last && (await openKept(page, last.id))) return;
  const [sample] = samples;
  if (sample) await openBundled(page, sample);
  if (gone) say(page, gone, 'wrong');
}
