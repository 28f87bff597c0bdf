import type { EntryRow, SnapshotRow } from './database.ts';
import { FORMAT } from './entry.ts';
import { type Access, type Files, put, putRecord, sourceOf } from './files.ts';
import type { StoredRows } from './recover.ts';
import { type About, copyHead, entryRecord, FRONT, frontOf, rowsOf, type Segment } from './segment.ts';
import { empty, latest, SLOTS, slotOf } from './slots.ts';

/** A segment that goes on. */
interface Current {
  readonly access: Access;
  end: number;
}

/** A place in the journal from which a segment may begin. */
export interface Turn {
  /** Writes a segment that begins with this copy; the one before it goes once this one is whole. */
  begin(copy: SnapshotRow, entries?: readonly EntryRow[]): Promise<void>;
  drop(): void;
}

/** What a second journal held when it was opened. */
export interface Held {
  readonly segment: Segment;
  rows(): StoredRows;
}

/**
 * The second journal of a book that is open for writing: the same entries and copies as in the database, in files of the
 * page's own. A browser may find its database damaged after it was ended at a bad moment, and then it deletes all of it.
 * Whatever happens to these files, the database keeps the book as before.
 */
export class SecondJournal {
  /** What is said of the book in each segment. */
  readonly about: Pick<About, 'id' | 'created' | 'origin'>;
  /** Entries that found no room in a segment, since one was last begun. */
  missed = 0;
  private readonly files: Files;
  private current: Current | undefined;
  /** Findings on opening, until it is gone on with or another one takes its place. */
  private found: Access | undefined;
  /** The file of the last segment that is whole. */
  private slot: string | undefined;
  private readonly writer: number;
  private number = 0;
  private title: string;
  private sequence: number;
  /** Who is writing a segment, and what was handed in meanwhile. */
  private turns = 0;
  private meanwhile: { readonly row: EntryRow; readonly title: string }[] = [];
  private ended = false;

  private constructor(files: Files, about: Omit<About, 'format' | 'number'>) {
    this.files = files;
    const { title, writer, ...others } = about;
    this.about = others;
    this.title = title;
    this.writer = writer;
    this.sequence = 0;
  }

  /**
   * Opens what there is of it. `goOn` or a turn must follow before anything is appended. Undefined when a newer program
   * wrote it: it is left alone.
   */
  static async open(
    files: Files,
    about: Omit<About, 'format' | 'number'>,
  ): Promise<{ readonly second: SecondJournal; readonly held?: Held } | undefined> {
    const found = await latest(files, about.id);
    if (found === 'newer') return undefined;
    const second = new SecondJournal(files, about);
    if (!found) return { second };
    const { slot, access, segment } = found;
    second.slot = slot;
    second.found = access;
    if (segment.about.writer === about.writer) second.number = segment.about.number;
    return { second, held: { segment, rows: () => rowsOf(segment, sourceOf(access)) } };
  }

  /** Goes on with the segment that was found. */
  goOn({ segment: { sequence, end, cut } }: Held): void {
    const access = this.found;
    if (!access) return;
    this.found = undefined;
    this.sequence = sequence;
    this.current = { access, end };
    if (cut) access.truncate(end);
  }

  /** Writes entries, and has them on the disk when it returns. What it has already is left out. */
  append(rows: readonly EntryRow[], title: string): void {
    const fresh = rows.filter(({ sequence }) => sequence > this.sequence);
    if (this.ended || fresh.length === 0) return;
    this.sequence = fresh.at(-1)!.sequence;
    this.title = title;
    if (this.turns > 0) this.meanwhile.push(...fresh.map((row) => ({ row, title })));
    const { current } = this;
    try {
      if (!current) throw new Error('no segment');
      let { end } = current;
      for (const row of fresh) end = put(current.access, end, entryRecord(row, title));
      current.access.flush();
      current.end = end;
    } catch {
      // Most likely there is no room. What the segment has stays; the next one has all of it.
      this.missed += fresh.length;
      this.letGo();
    }
  }

  /** Call as the book is copied: what is handed in from then on comes after the copy. */
  turn(): Turn {
    this.turns++;
    let over = false;
    const drop = (): void => {
      if (!over && --this.turns === 0) this.meanwhile = [];
      over = true;
    };
    return { begin: (...from) => this.begin(...from).finally(drop), drop };
  }

  /** Ends writing at once. */
  close(): void {
    this.ended = true;
    this.found?.close();
    this.found = undefined;
    this.letGo();
  }

  private async begin(copy: SnapshotRow, entries: readonly EntryRow[] = []): Promise<void> {
    this.missed = 0;
    this.found?.close();
    this.found = undefined;
    const free = await this.free();
    if (!free) return;
    const { slot, access } = free;
    try {
      access.truncate(0);
      let end = await putRecord(access, FRONT, copyHead(copy), copy.bytes);
      for (const row of entries) end = put(access, end, entryRecord(row, this.title));
      if (this.ended) throw new Error('ended');
      // From here on nothing comes between: what was handed in stands in both segments, or the new one is none.
      let sequence = entries.at(-1)?.sequence ?? copy.sequence;
      for (const { row, title } of this.meanwhile) {
        if (row.sequence <= sequence) continue;
        end = put(access, end, entryRecord(row, title));
        ({ sequence } = row);
      }
      access.flush();
      const { about, title, writer } = this;
      put(access, 0, frontOf({ ...about, title, writer, format: FORMAT, number: ++this.number }));
      access.flush();
      this.sequence = Math.max(this.sequence, sequence);
      this.letGo();
      this.current = { access, end };
    } catch {
      empty(access);
      return;
    }
    const before = this.slot;
    this.slot = slot;
    if (before !== undefined) empty(await this.files.access(slotOf(this.about.id, before)));
  }

  /** A file for the next segment, never the one that holds the last. */
  private async free(): Promise<{ readonly slot: string; readonly access: Access } | undefined> {
    for (const slot of SLOTS) {
      if (slot === this.slot) continue;
      const access = await this.files.access(slotOf(this.about.id, slot), { create: true });
      if (access) return { slot, access };
    }
    return undefined;
  }

  private letGo(): void {
    const { current } = this;
    this.current = undefined;
    try {
      current?.access.truncate(current.end);
    } catch {
      // Then what is behind its end is found to be no record.
    }
    current?.access.close();
  }
}
