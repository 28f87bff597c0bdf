import type { LiveBook } from '../book/book.ts';
import { createBook } from '../book/book.ts';
import type { Book } from '../book/model.ts';
import { BookStore, type SnapshotPolicy, type Standing } from './book-store.ts';
import { contentOf } from './content.ts';
import { type BookRow, type Database, keysOf, openDatabase } from './database.ts';
import { FORMAT, snapshotRow } from './entry.ts';
import { type Fault, failed, fault, faultOf, type Outcome } from './faults.ts';
import { type Hold, hold, isHeld } from './lock.ts';
import { type Rebuilt, rebuild, type Step } from './rebuild.ts';
import { type Recovered, recover, type StoredRows } from './recover.ts';
import { Versions } from './versions.ts';

/** A book as the list shows it. */
export type ShelfBook = Pick<BookRow, 'id' | 'title' | 'created' | 'opened' | 'changed' | 'origin'>;

export interface ShelfOptions {
  /** Name of the database, for tests. */
  readonly name?: string;
  readonly policy?: Partial<SnapshotPolicy>;
}

/** A stored book, opened. Without a `store` it can only be read, and `reading` says why. */
export interface OpenedBook {
  readonly id: string;
  readonly book: LiveBook;
  /** What happened since the last snapshot, for undo. */
  readonly steps: readonly Step[];
  /** What was recovered and what was lost, a sentence each. */
  readonly notes: readonly string[];
  readonly store?: BookStore;
  readonly reading?: Fault;
}

/** Opens the place where books are kept. */
export async function openShelf(options: ShelfOptions = {}): Promise<Outcome<{ shelf: Shelf }>> {
  let shelf: Shelf | undefined;
  const opened = await openDatabase(options.name ?? 'leverbook', {
    onNewer: () => shelf?.end(fault('newer')),
    onGone: () => shelf?.end(fault('gone')),
  });
  if (!opened.ok) return opened;
  shelf = new Shelf(opened.database, options.policy ?? {});
  return { ok: true, shelf };
}

/** The books that this browser keeps. */
export class Shelf {
  readonly versions: Versions;
  private readonly database: Database;
  private readonly policy: Partial<SnapshotPolicy>;
  private readonly open = new Map<string, { readonly store: BookStore; readonly hold: Hold }>();

  constructor(database: Database, policy: Partial<SnapshotPolicy>) {
    this.database = database;
    this.policy = policy;
    this.versions = new Versions(database);
  }

  /** The books, the one opened last first. */
  async list(): Promise<readonly ShelfBook[]> {
    const rows = await this.database.getAll('books');
    return rows
      .map(({ id, title, created, opened, changed, origin }) => ({
        id,
        title: typeof title === 'string' ? title : id,
        created,
        opened,
        changed,
        ...(origin === undefined ? {} : { origin }),
      }))
      .sort((a, b) => b.opened - a.opened);
  }

  /** Puts a book on the shelf and opens it for writing. */
  async create(book: Book = createBook(), origin?: string): Promise<Outcome<{ store: BookStore }>> {
    const id = crypto.randomUUID();
    const held = await hold(id, false, () => this.taken(id));
    if (!held) return failed('in use');
    const now = Date.now();
    const row: BookRow = {
      id,
      title: book.title,
      created: now,
      opened: now,
      changed: now,
      ...(origin === undefined ? {} : { origin }),
      format: FORMAT,
      head: 0,
      seal: '',
      writer: 1,
    };
    try {
      const snapshot = await snapshotRow(id, 0, '', contentOf(book));
      const transaction = this.database.transaction(['books', 'snapshots'], 'readwrite', {
        durability: 'strict',
      });
      await Promise.all([
        transaction.objectStore('books').put(row),
        transaction.objectStore('snapshots').put(snapshot),
        transaction.done,
      ]);
      const standing = { sequence: 0, seal: '', bytes: 0, entries: 0, snapshotBytes: snapshot.bytes.length };
      return { ok: true, store: this.writing(id, 1, standing, held) };
    } catch (reason) {
      held.release();
      return { ok: false, fault: faultOf(reason) };
    }
  }

  /**
   * Opens a book: rebuilds it from the newest whole snapshot and the changes since, whatever state they are in. Another
   * tab that writes it makes it open for reading, unless it is taken over.
   */
  async openBook(id: string, { takeOver = false } = {}): Promise<Outcome<OpenedBook>> {
    const held = await hold(id, takeOver, () => this.taken(id));
    try {
      const rows = await (held ? this.claim(id) : this.read(id));
      if (!rows.book && rows.snapshots.length === 0) {
        held?.release();
        return failed('missing');
      }
      const recovered = await recover(rows);
      if (recovered.newer || (rows.book?.format ?? 0) > FORMAT) {
        held?.release();
        return failed('newer');
      }
      const rebuilt = rebuild(recovered);
      const notes = [...recovered.notes, ...rebuilt.notes];
      const opened = { id, book: rebuilt.book, steps: rebuilt.steps, notes };
      if (!held || !rows.book) return { ok: true, ...opened, reading: fault('in use') };
      const standing = await this.mended(id, recovered, rebuilt);
      return { ok: true, ...opened, store: this.writing(id, rows.book.writer, standing, held) };
    } catch (reason) {
      held?.release();
      return { ok: false, fault: faultOf(reason) };
    }
  }

  /** Removes a book with its journal and versions; not while another tab writes it. */
  async remove(id: string): Promise<Outcome<object>> {
    if (!this.open.has(id) && (await isHeld(id))) return failed('in use');
    await this.closeBook(id);
    try {
      const names = ['books', 'entries', 'snapshots', 'versions', 'texts'] as const;
      const transaction = this.database.transaction(names, 'readwrite', { durability: 'strict' });
      await Promise.all([
        transaction.objectStore('books').delete(id),
        ...names.slice(1).map((name) => transaction.objectStore(name).delete(keysOf(id))),
        transaction.done,
      ]);
      return { ok: true };
    } catch (reason) {
      return { ok: false, fault: faultOf(reason) };
    }
  }

  /** Ends writing a book, after everything handed in was tried, and lets other tabs have it. */
  async closeBook(id: string): Promise<void> {
    const open = this.open.get(id);
    if (!open) return;
    await open.store.close();
    this.open.delete(id);
    open.hold.release();
  }

  async close(): Promise<void> {
    for (const id of [...this.open.keys()]) await this.closeBook(id);
    this.database.close();
  }

  /** Ends all writing at once. */
  end(why: Fault): void {
    for (const { store } of this.open.values()) store.end(why);
  }

  private taken(id: string): void {
    this.open.get(id)?.store.end(fault('taken over'));
    this.open.delete(id);
  }

  private writing(id: string, writer: number, standing: Standing, held: Hold): BookStore {
    const store = new BookStore(this.database, id, writer, standing, this.policy);
    this.open.set(id, { store, hold: held });
    return store;
  }

  private async read(id: string): Promise<StoredRows> {
    const transaction = this.database.transaction(['books', 'entries', 'snapshots']);
    const [book, entries, snapshots] = await Promise.all([
      transaction.objectStore('books').get(id),
      transaction.objectStore('entries').getAll(keysOf(id)),
      transaction.objectStore('snapshots').getAll(keysOf(id)),
    ]);
    return { book, entries, snapshots };
  }

  /** Reads everything and makes this the book's only writer, in one step. */
  private async claim(id: string): Promise<StoredRows> {
    const transaction = this.database.transaction(['books', 'entries', 'snapshots'], 'readwrite', {
      durability: 'strict',
    });
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

  /**
   * Where the journal goes on. After a loss what cannot be read stays where it is, and a snapshot behind it begins anew:
   * nothing is written over.
   */
  private async mended(id: string, recovered: Recovered, rebuilt: Rebuilt): Promise<Standing> {
    const { sequence, seal, bytes, entries, snapshotBytes } = recovered;
    const whole = recovered.lost === 0 && rebuilt.undone === 0 && recovered.content !== undefined;
    if (whole) return { sequence, seal, bytes, entries: entries.length, snapshotBytes };
    const anew = recovered.top + 1;
    const snapshot = await snapshotRow(id, anew, '', contentOf(rebuilt.book));
    const transaction = this.database.transaction('snapshots', 'readwrite', { durability: 'strict' });
    await Promise.all([transaction.store.put(snapshot), transaction.done]);
    return { sequence: anew, seal: '', bytes: 0, entries: 0, snapshotBytes: snapshot.bytes.length };
  }
}
