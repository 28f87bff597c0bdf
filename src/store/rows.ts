/** Reads and writes the rows of the database that belong to one book. */
import { type BookRow, type Database, keysOf, type SnapshotRow } from './database.ts';
import { FORMAT } from './entry.ts';
import type { StoredRows } from './recover.ts';

const journal = ['books', 'entries', 'snapshots'] as const;
const all = [...journal, 'versions', 'texts'] as const;
const strict = { durability: 'strict' } as const;

export async function readRows(database: Database, id: string): Promise<StoredRows> {
  const transaction = database.transaction(journal);
  const [book, entries, snapshots] = await Promise.all([
    transaction.objectStore('books').get(id),
    transaction.objectStore('entries').getAll(keysOf(id)),
    transaction.objectStore('snapshots').getAll(keysOf(id)),
  ]);
  return { book, entries, snapshots };
}

/** Reads everything and makes the caller the book's only writer, in one step. */
export async function claimRows(database: Database, id: string): Promise<StoredRows> {
  const transaction = database.transaction(journal, 'readwrite', strict);
  const [book, entries, snapshots] = await Promise.all([
    transaction.objectStore('books').get(id),
    transaction.objectStore('entries').getAll(keysOf(id)),
    transaction.objectStore('snapshots').getAll(keysOf(id)),
  ]);
  if (!book || book.format > FORMAT) {
    await transaction.done;
    return { book, entries, snapshots };
  }
  const claimed: BookRow = { ...book, writer: (book.writer || 0) + 1, opened: Date.now() };
  await transaction.objectStore('books').put(claimed);
  await transaction.done;
  return { book: claimed, entries, snapshots };
}

/** Stores a book that was not there, or what of it was not. */
export async function putRows(database: Database, { book, entries, snapshots }: StoredRows): Promise<void> {
  const transaction = database.transaction(journal, 'readwrite', strict);
  await Promise.all([
    ...(book ? [transaction.objectStore('books').put(book)] : []),
    ...snapshots.map((row) => transaction.objectStore('snapshots').put(row)),
    ...entries.map((row) => transaction.objectStore('entries').put(row)),
    transaction.done,
  ]);
}

export const putSnapshot = (database: Database, snapshot: SnapshotRow): Promise<void> =>
  putRows(database, { book: undefined, entries: [], snapshots: [snapshot] });

/** Removes a book with its journal and its versions. */
export async function removeRows(database: Database, id: string): Promise<void> {
  const transaction = database.transaction(all, 'readwrite', strict);
  const [, ...others] = all;
  await Promise.all([
    transaction.objectStore('books').delete(id),
    ...others.map((name) => transaction.objectStore(name).delete(keysOf(id))),
    transaction.done,
  ]);
}
