import type { LibraryBook } from './library.ts';

/** Whether the browser promised not to clear the books when disk space runs short. */
export type Persistence = 'promised' | 'refused' | 'unknown';

/** Asks the browser not to clear the books by itself. From a page only: workers cannot ask. */
export async function askToPersist(): Promise<Persistence> {
  const storage = globalThis.navigator?.storage as Partial<StorageManager> | undefined;
  if (!storage?.persist) return 'unknown';
  try {
    if (await storage.persisted?.()) return 'promised';
    return (await storage.persist()) ? 'promised' : 'refused';
  } catch {
    return 'unknown';
  }
}

/** What to say about it; nothing when all is well. */
export const persistenceNote = (persistence: Persistence): string | undefined =>
  persistence === 'promised'
    ? undefined
    : 'The browser may clear saved books when the disk runs full. Save important books to files.';

/** A small memory outside the database, such as the page's local storage: it may outlive a clearing. */
export interface Memory {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}
const KEY = 'leverbook-books';

/** Notes how many books there are. Call it whenever the list changes. */
export function remember(memory: Memory, books: readonly LibraryBook[]): void {
  try {
    memory.setItem(KEY, JSON.stringify(books.map(({ title }) => title).slice(0, 50)));
  } catch {
    // A browser that keeps nothing for pages has nothing to remember either.
  }
}

/** When books were here and none is left, the browser has cleared them: says so. */
export function clearedNote(memory: Memory, books: readonly LibraryBook[]): string | undefined {
  if (books.length > 0) return undefined;
  try {
    const titles: unknown = JSON.parse(memory.getItem(KEY) ?? '[]');
    if (!Array.isArray(titles) || titles.length === 0) return undefined;
    const named = titles.slice(0, 3).map((title) => `“${String(title)}”`);
    const more = titles.length > 3 ? ` and ${titles.length - 3} more` : '';
    return `The browser has cleared the books saved here (${named.join(', ')}${more}). Open them from the files you saved.`;
  } catch {
    return undefined;
  }
}
