import type { LiveBook } from '../book/book.ts';
import { createBook } from '../book/book.ts';
import { type History, noPast, type Past } from '../book/history.ts';
import type { Book } from '../book/model.ts';
import { BookStore, type SnapshotPolicy, type Standing } from './book-store.ts';
import { type Both, recoverBoth } from './both.ts';
import { bringBack } from './bring-back.ts';
import { contentOf } from './content.ts';
import { type BookRow, type Database, openDatabase } from './database.ts';
import { FORMAT, snapshotRow } from './entry.ts';
import { type Fault, failed, fault, faultOf, type Outcome } from './faults.ts';
import { Files } from './files.ts';
import { type Hold, hold, isHeld } from './lock.ts';
import { pastBytes } from './past.ts';
import { type Rebuilt, rebuild } from './rebuild.ts';
import { claimRows, putRows, putSnapshot, readRows, removeRows } from './rows.ts';
import { SecondJournal } from './second.ts';
import { removeSecond } from './slots.ts';
import { matchVersions, removeVersion, versionsIn } from './version-files.ts';
import { Versions } from './versions.ts';

/** A book as the list shows it. */
export type LibraryBook = Pick<BookRow, 'id' | 'title' | 'created' | 'opened' | 'changed' | 'origin'>;

export interface LibraryOptions {
  /** Name of the database, for tests. */
  readonly name?: string;
  readonly policy?: Partial<SnapshotPolicy>;
}

/** A stored book, opened. Without a `store` it can only be read, and `reading` says why. */
export interface OpenedBook {
  readonly id: string;
  readonly book: LiveBook;
  /** What can be undone and redone in it. */
  readonly history: History;
  /** What was recovered and what was lost, a sentence each. */
  readonly notes: readonly string[];
  readonly store?: BookStore;
  readonly reading?: Fault;
}

/** Opens the place where books are kept. Books that the browser has lost are put back into it. */
export async function openLibrary(options: LibraryOptions = {}): Promise<Outcome<{ library: Library }>> {
  const name = options.name ?? 'leverbook';
  let library: Library | undefined;
  const opened = await openDatabase(name, {
    onNewer: () => library?.end(fault('newer')),
    onGone: () => library?.end(fault('gone')),
  });
  if (!opened.ok) return opened;
  const { database } = opened;
  const files = await Files.open(name);
  // The books that are there go before those that might be brought back.
  const back = files ? await bringBack(database, files).catch(() => undefined) : undefined;
  library = new Library(database, files, options.policy ?? {}, back);
  return { ok: true, library };
}

/** The books that this browser keeps. */
export class Library {
  readonly versions: Versions;
  private readonly database: Database;
  private readonly files: Files | undefined;
  private readonly policy: Partial<SnapshotPolicy>;
  private readonly open = new Map<string, { readonly store: BookStore; readonly hold: Hold }>();
  /** What is to be said about books that were brought back, by id; said once. */
  private readonly back: Map<string, string>;

  constructor(
    database: Database,
    files: Files | undefined,
    policy: Partial<SnapshotPolicy>,
    back: ReadonlyMap<string, string> = new Map(),
  ) {
    this.database = database;
    this.files = files;
    this.policy = policy;
    this.back = new Map(back);
    this.versions = new Versions(database, files);
  }

  /** The books, the one opened last first. */
  async list(): Promise<readonly LibraryBook[]> {
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

  /** Puts a book into the library, with what can be undone in it, and opens it for writing. */
  async create(
    book: Book = createBook(),
    origin?: string,
    past: Past = noPast,
  ): Promise<Outcome<{ store: BookStore }>> {
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
      const snapshot = await snapshotRow(id, 0, '', contentOf(book), pastBytes(past));
      await putRows(this.database, { book: row, entries: [], snapshots: [snapshot] });
      const second = await this.second(row);
      await second?.second.turn().begin(snapshot);
      const standing = { sequence: 0, seal: '', bytes: 0, entries: 0, snapshotBytes: snapshot.bytes.length };
      return { ok: true, store: this.writing(row, standing, held, second?.second) };
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
    let second: SecondJournal | undefined;
    const givenUp = (fault: Fault): { readonly ok: false; readonly fault: Fault } => {
      second?.close();
      held?.release();
      return { ok: false, fault };
    };
    try {
      const rows = await (held ? claimRows : readRows)(this.database, id);
      if (!rows.book && rows.snapshots.length === 0) return givenUp(fault('missing'));
      const beside = held && rows.book ? await this.second(rows.book) : undefined;
      ({ second } = beside ?? {});
      const both = await recoverBoth(rows, beside?.held);
      const { recovered } = both;
      if (recovered.newer || (rows.book?.format ?? 0) > FORMAT) return givenUp(fault('newer'));
      const rebuilt = rebuild(recovered);
      const back = this.back.get(id);
      this.back.delete(id);
      const notes = [...(back === undefined ? [] : [back]), ...recovered.notes, ...rebuilt.notes];
      const opened = { id, book: rebuilt.book, history: rebuilt.history, notes };
      if (!held || !rows.book) return { ok: true, ...opened, reading: fault('in use') };
      const standing = await this.mended(rows.book, both, rebuilt, beside);
      return { ok: true, ...opened, store: this.writing(rows.book, standing, held, second) };
    } catch (reason) {
      return givenUp(faultOf(reason));
    }
  }

  /** Removes a book with its journals and versions; not while another tab writes it. */
  async remove(id: string): Promise<Outcome<object>> {
    if (!this.open.has(id) && (await isHeld(id))) return failed('in use');
    await this.closeBook(id);
    try {
      const { files } = this;
      // First: a book that has a second journal only is taken for lost by the database.
      if (files) {
        await removeSecond(files, id);
        for (const number of await versionsIn(files, id)) await removeVersion(files, id, number);
      }
      await removeRows(this.database, id);
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

  private writing(
    { id, writer }: BookRow,
    standing: Standing,
    held: Hold,
    second: SecondJournal | undefined,
  ): BookStore {
    const store = new BookStore(this.database, id, writer, standing, this.policy, second);
    this.open.set(id, { store, hold: held });
    return store;
  }

  /** The second journal of a book, where there can be one. */
  private async second({ id, created, origin, title, writer }: BookRow) {
    const about = { id, created, title: String(title), writer, ...(origin === undefined ? {} : { origin }) };
    return this.files && (await SecondJournal.open(this.files, about).catch(() => undefined));
  }

  /**
   * Where the journals go on. After a loss what cannot be read stays where it is, and a snapshot behind it begins anew:
   * nothing is written over. What the database lacks of a whole book is put into it, and the second journal begins with what
   * there is unless it has that.
   */
  private async mended(
    book: BookRow,
    { recovered, goesOn, needed }: Both,
    rebuilt: Rebuilt,
    beside: Awaited<ReturnType<Library['second']>>,
  ): Promise<Standing> {
    const { sequence, seal, bytes, entries, rows, snapshot, lost, content, top } = recovered;
    const { id } = book;
    if (this.files) await matchVersions(this.database, this.files, id).catch(() => undefined);
    if (snapshot && content !== undefined && lost === 0 && rebuilt.undone === 0) {
      if (needed)
        await putRows(this.database, {
          book: { ...book, head: sequence, seal },
          snapshots: [snapshot],
          entries: rows,
        });
      if (goesOn && beside?.held) beside.second.goOn(beside.held);
      else await beside?.second.turn().begin(snapshot, rows);
      return { sequence, seal, bytes, entries: entries.length, snapshotBytes: snapshot.bytes.length };
    }
    const anew = await snapshotRow(id, top + 1, '', contentOf(rebuilt.book), pastBytes(rebuilt.history.past));
    await putSnapshot(this.database, anew);
    await beside?.second.turn().begin(anew);
    return { sequence: top + 1, seal: '', bytes: 0, entries: 0, snapshotBytes: anew.bytes.length };
  }
}
