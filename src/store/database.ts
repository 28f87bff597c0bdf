import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { failed, faultOf, type Outcome } from './faults.ts';

/** A book in the list. */
export interface BookRow {
  readonly id: string;
  readonly title: string;
  /** Times are milliseconds since 1970, UTC. */
  readonly created: number;
  readonly opened: number;
  readonly changed: number;
  /** File that it came from. */
  readonly origin?: string;
  /** Format of its entries and snapshots. */
  readonly format: number;
  /** Sequence of the last entry that was acknowledged, and its seal. */
  readonly head: number;
  readonly seal: string;
  /** Grows with every opening for writing: whoever holds an older number may not write any more. */
  readonly writer: number;
}

export interface EntryRow {
  readonly book: string;
  readonly sequence: number;
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly seal: string;
}

export interface SnapshotRow {
  readonly book: string;
  /** The last entry that is in it. */
  readonly sequence: number;
  /** Seal of that entry: the next one's chain goes on from it. */
  readonly chain: string;
  readonly time: number;
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly seal: string;
}

export interface VersionRow {
  readonly book: string;
  readonly number: number;
  readonly name: string;
  readonly time: number;
  /** Characters of the book file. */
  readonly size: number;
}

/** The book file of a version, packed with gzip. */
export interface TextRow {
  readonly book: string;
  readonly number: number;
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly seal: string;
}

export interface Schema extends DBSchema {
  books: { key: string; value: BookRow };
  entries: { key: [book: string, sequence: number]; value: EntryRow };
  snapshots: { key: [book: string, sequence: number]; value: SnapshotRow };
  versions: { key: [book: string, number: number]; value: VersionRow };
  texts: { key: [book: string, number: number]; value: TextRow };
}

export type Database = IDBPDatabase<Schema>;

const VERSION = 1;

export interface DatabaseEvents {
  /** A newer program in another tab wants the database; this connection was closed for it. */
  readonly onNewer?: () => void;
  /** The browser ended the connection: storage was cleared, or its disk is gone. */
  readonly onGone?: () => void;
}

/** Opens the database, making it where there is none. */
export async function openDatabase(
  name: string,
  events: DatabaseEvents = {},
  version = VERSION,
): Promise<Outcome<{ database: Database }>> {
  if (!globalThis.indexedDB) return failed('unavailable');
  let blocked: (() => void) | undefined;
  const stands = new Promise<'blocked'>((resolve) => {
    blocked = () => resolve('blocked');
  });
  try {
    const opening = openDB<Schema>(name, version, {
      upgrade(database, from) {
        if (from >= 1) return;
        database.createObjectStore('books', { keyPath: 'id' });
        database.createObjectStore('entries', { keyPath: ['book', 'sequence'] });
        database.createObjectStore('snapshots', { keyPath: ['book', 'sequence'] });
        database.createObjectStore('versions', { keyPath: ['book', 'number'] });
        database.createObjectStore('texts', { keyPath: ['book', 'number'] });
      },
      blocked: () => blocked?.(),
      blocking(_current, wanted, event) {
        (event.target as IDBDatabase).close();
        if (wanted === null) events.onGone?.();
        else events.onNewer?.();
      },
      terminated: () => events.onGone?.(),
    });
    const first = await Promise.race([opening, stands]);
    if (first !== 'blocked') return { ok: true, database: first };
    // It may still open later, when nobody waits for it any more.
    opening.then((late) => late.close()).catch(() => undefined);
    return failed('blocked');
  } catch (reason) {
    const { why } = faultOf(reason);
    return why === 'newer'
      ? failed('newer')
      : failed('unavailable', reason instanceof Error ? reason.message : undefined);
  }
}

/** All keys of a book in a store, from one number to another. */
export const keysOf = (book: string, from = 0, to = Number.MAX_SAFE_INTEGER): IDBKeyRange =>
  IDBKeyRange.bound([book, from], [book, to]);
