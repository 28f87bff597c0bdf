import { type Database, keysOf } from './database.ts';
import { readSnapshot } from './entry.ts';

/** Copies of a book that are kept: when the newest is damaged, the one before it is there with all that happened since. */
const KEPT = 2;

/**
 * Drops what no recovery needs: everything from before the two newest snapshots. Both are read back first, and a damaged
 * one does not count. Answers the sequence from which the journal still goes.
 */
export async function compact(database: Database, book: string): Promise<number> {
  const keys = (await database.getAllKeys('snapshots', keysOf(book))).toReversed();
  let whole = 0;
  for (const key of keys) {
    const row = await database.get('snapshots', key);
    if (!row || !(await readSnapshot(row)).ok || ++whole < KEPT) continue;
    const transaction = database.transaction(['entries', 'snapshots'], 'readwrite');
    await Promise.all([
      transaction.objectStore('entries').delete(keysOf(book, 0, row.sequence)),
      row.sequence > 0
        ? transaction.objectStore('snapshots').delete(keysOf(book, 0, row.sequence - 1))
        : undefined,
      transaction.done,
    ]);
    return row.sequence;
  }
  return 0;
}
