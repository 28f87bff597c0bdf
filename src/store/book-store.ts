import type { Edit } from '../book/edit.ts';
import { noPast, type Past } from '../book/history.ts';
import { compact } from './compact.ts';
import type { Database, EntryRow } from './database.ts';
import { type Entry, entryBytes, snapshotRow } from './entry.ts';
import { type Fault, failed, fault, faultOf, type Outcome } from './faults.ts';
import { LARGEST_PAST, pastBytes } from './past.ts';
import { sealOf } from './seal.ts';
import type { SecondJournal, Turn } from './second.ts';

/** When the next snapshot is due: enough changes, or a journal larger than the book. */
export interface SnapshotPolicy {
  readonly entries: number;
  readonly bytes: number;
  /** Bytes of undo that it takes along at most. */
  readonly past: number;
}
const usual: SnapshotPolicy = { entries: 300, bytes: 4_000_000, past: LARGEST_PAST };
/** After so many entries that the second journal could not take, it is begun anew. */
const MISSED = 16;

/** Where the journal of an open book stands. */
export interface Standing {
  readonly sequence: number;
  readonly seal: string;
  /** Bytes of the entries since the last snapshot, and their number. */
  readonly bytes: number;
  readonly entries: number;
  readonly snapshotBytes: number;
}

export type Stored = Outcome<{ readonly sequence: number }>;

interface Waiting {
  readonly sequence: number;
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly title: string;
  readonly tell: (stored: Stored) => void;
  /** Once computed: it depends on what comes before, and that does not change. */
  seal?: string;
}

/** A snapshot that is to be written. */
interface Copying {
  readonly sequence: number;
  readonly edit: Edit;
  readonly past: Past;
  /** Bytes of the entries that it makes needless. */
  readonly covered: number;
  readonly turn: Turn | undefined;
}

interface Mark {
  readonly sequence: number;
  readonly resolve: (seal: string | undefined) => void;
}

/** The journal of one book that is open for writing, in the database and, where there is one, in its second journal. */
export class BookStore {
  readonly id: string;
  /** Called once, when this store may write no more: taken over, cleared, a newer program. */
  onFault: ((fault: Fault) => void) | undefined;
  private readonly database: Database;
  private readonly writer: number;
  private readonly policy: SnapshotPolicy;
  private readonly second: SecondJournal | undefined;
  private standing: Standing;
  /** Sequence of the last entry that was handed in. */
  private given: number;
  /** What stands in `given` but not yet in the database; kept when storing fails, so that a later try stores it too. */
  private queue: Waiting[] = [];
  private pumping: Promise<void> = Promise.resolve();
  private running = false;
  private copying: Promise<unknown> = Promise.resolve();
  private copies = 0;
  /** Who waits for the seal of an entry. */
  private readonly marks: Mark[] = [];
  private ended: Fault | undefined;

  constructor(
    database: Database,
    id: string,
    writer: number,
    standing: Standing,
    policy: Partial<SnapshotPolicy> = {},
    second?: SecondJournal,
  ) {
    this.database = database;
    this.id = id;
    this.writer = writer;
    this.standing = standing;
    this.given = standing.sequence;
    this.policy = { ...usual, ...policy };
    this.second = second;
  }

  /** Sequence of the last entry that is stored. */
  get stored(): number {
    return this.standing.sequence;
  }
  /** Entries that were handed in and are not stored. */
  get waiting(): number {
    return this.queue.length;
  }
  /** True when a snapshot would spare the next opening much work. */
  get due(): boolean {
    const { entries, bytes, snapshotBytes } = this.standing;
    const behind = (this.second?.missed ?? 0) >= MISSED;
    return (
      this.copies === 0 &&
      (behind || entries >= this.policy.entries || bytes >= Math.max(this.policy.bytes, snapshotBytes))
    );
  }

  /**
   * Stores one thing that happened to the book, whose title is now `title`. Answers when it is on the disk, in both journals,
   * together with everything handed in before. When it cannot be stored it is kept here and tried again with the next one.
   */
  append(entry: Entry, title: string): Promise<Stored> {
    if (this.ended) return Promise.resolve({ ok: false, fault: this.ended });
    const sequence = ++this.given;
    return new Promise((tell) => {
      this.queue.push({ sequence, bytes: entryBytes(entry), title, tell });
      this.pump();
    });
  }

  /** Tries again to store what is waiting. */
  async retry(): Promise<Stored> {
    while (this.running) await this.pumping;
    if (this.ended) return { ok: false, fault: this.ended };
    if (this.queue.length === 0) return { ok: true, sequence: this.stored };
    const last = this.queue.pop()!;
    return new Promise((tell) => {
      this.queue.push({ ...last, tell });
      this.pump();
    });
  }

  /**
   * Stores a copy of the whole book in the background; what the journal holds from before the two newest copies then goes,
   * and the second journal begins anew with this one.
   * The book must be as the last entry handed in left it. `content`, and what can be undone in it, are asked for at once.
   */
  snapshot(content: () => Edit, past: () => Past = () => noPast): Promise<Stored> {
    if (this.ended) return Promise.resolve({ ok: false, fault: this.ended });
    const sequence = this.given;
    const covered = this.queue.reduce((sum, { bytes }) => sum + bytes.length, this.standing.bytes);
    const [edit, undoable] = [content(), past()];
    const turn = this.second?.turn();
    const reached = this.reached(sequence);
    this.copies++;
    const copied = this.copying
      .then(() => reached)
      .then((chain) =>
        chain === undefined
          ? failed('reading')
          : this.copy(chain, { sequence, edit, past: undoable, covered, turn }),
      )
      .finally(() => {
        turn?.drop();
        this.copies--;
      });
    this.copying = copied;
    return copied;
  }

  /** Ends writing, after everything handed in was tried. */
  async close(): Promise<void> {
    await this.pumping;
    for (const { resolve } of this.marks.splice(0)) resolve(undefined);
    await this.copying;
    this.ended ??= fault('reading');
    this.second?.close();
  }

  /** Ends writing at once: another one writes, or the storage is gone. */
  end(why: Fault): void {
    if (this.ended) return;
    this.ended = why;
    this.second?.close();
    for (const { tell } of this.queue.splice(0)) tell({ ok: false, fault: why });
    for (const { resolve } of this.marks.splice(0)) resolve(undefined);
    this.onFault?.(why);
  }

  private pump(): void {
    if (this.running) return;
    this.running = true;
    this.pumping = this.storeAll();
  }

  private async storeAll(): Promise<void> {
    // Entries that failed wait for the next one that is handed in.
    let stuck = 0;
    while (this.queue.length > stuck && !this.ended) {
      const batch = this.queue.slice();
      const outcome = await this.store(batch);
      if (this.ended) break;
      if (outcome.ok) {
        this.queue.splice(0, batch.length);
        stuck = 0;
      } else if (outcome.fault.why === 'full' || outcome.fault.why === 'failed') stuck = batch.length;
      else {
        this.end(outcome.fault);
        break;
      }
      for (const { sequence, tell } of batch) tell(outcome.ok ? { ok: true, sequence } : outcome);
    }
    this.running = false;
  }

  /** Stores entries in one transaction, all or none. */
  private async store(batch: readonly Waiting[]): Promise<Outcome<object>> {
    try {
      const rows: EntryRow[] = [];
      let before = this.standing.seal;
      for (const waiting of batch) {
        const { sequence, bytes } = waiting;
        waiting.seal ??= await sealOf(bytes, { book: this.id, sequence, before });
        const { seal } = waiting;
        rows.push({ book: this.id, sequence, bytes, seal });
        before = seal;
      }
      const wrong = await this.write(rows, batch.at(-1)!.title);
      if (wrong) return { ok: false, fault: wrong };
      const { sequence, seal } = rows.at(-1)!;
      const bytes = rows.reduce((sum, row) => sum + row.bytes.length, this.standing.bytes);
      this.standing = {
        ...this.standing,
        sequence,
        seal,
        bytes,
        entries: this.standing.entries + rows.length,
      };
      for (const row of rows) this.passed(row);
      return { ok: true };
    } catch (reason) {
      return { ok: false, fault: faultOf(reason) };
    }
  }

  private passed({ sequence, seal }: { readonly sequence: number; readonly seal: string }): void {
    const at = this.marks.findIndex((mark) => mark.sequence === sequence);
    if (at >= 0) this.marks.splice(at, 1)[0]!.resolve(seal);
  }

  private async write(rows: readonly EntryRow[], title: string): Promise<Fault | undefined> {
    const transaction = this.database.transaction(['books', 'entries'], 'readwrite', {
      durability: 'strict',
    });
    const done = transaction.done;
    // Whoever awaits a failed request below hears of the failure there.
    done.catch(() => undefined);
    const book = await transaction.objectStore('books').get(this.id);
    if (!book || book.writer !== this.writer) {
      transaction.abort();
      return fault(book ? 'taken over' : 'missing');
    }
    const { sequence: head, seal } = rows.at(-1)!;
    const put = Promise.all([
      ...rows.map((row) => transaction.objectStore('entries').put(row)),
      transaction.objectStore('books').put({ ...book, title, head, seal, changed: Date.now() }),
      done,
    ]);
    // While the database is at it. Nobody else has written meanwhile: the transaction has the book to itself.
    this.second?.append(rows, title);
    await put;
    return undefined;
  }

  /** The seal of an entry, once it is stored; undefined when writing ends before. */
  private reached(sequence: number): Promise<string | undefined> {
    if (this.stored === sequence) return Promise.resolve(this.standing.seal);
    return new Promise((resolve) => this.marks.push({ sequence, resolve }));
  }

  /** Another tab that writes meanwhile cannot make a copy wrong, so nobody looks at the writer here. */
  private async copy(chain: string, { sequence, edit, past, covered, turn }: Copying): Promise<Stored> {
    try {
      const row = await snapshotRow(this.id, sequence, chain, edit, pastBytes(past, this.policy.past));
      await this.database.put('snapshots', row);
      this.standing = {
        ...this.standing,
        entries: this.stored - sequence,
        bytes: this.standing.bytes - covered,
        snapshotBytes: row.bytes.length,
      };
      await turn?.begin(row);
      await compact(this.database, this.id);
      return { ok: true, sequence };
    } catch (reason) {
      return { ok: false, fault: faultOf(reason) };
    }
  }
}
