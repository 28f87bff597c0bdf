import type { Edit } from '../book/edit.ts';
import type { BookRow, EntryRow, SnapshotRow } from './database.ts';
import { type Copy, type Entry, readEntry, readSnapshot } from './entry.ts';

/** Everything that is stored of one book, as it was read. */
export interface StoredRows {
  readonly book: BookRow | undefined;
  /** By sequence, upwards. */
  readonly snapshots: readonly SnapshotRow[];
  readonly entries: readonly EntryRow[];
}

/** What can be trusted of what is stored. */
export interface Recovered {
  /** Makes the book of a new one; undefined when no snapshot can be read. */
  readonly content: Edit | undefined;
  /** What could be undone and redone in `content`, as it was stored. */
  readonly past?: unknown;
  /** What happened after it, in order. */
  readonly entries: readonly Entry[];
  /** Sequence and seal of the last entry that is in `content` or `entries`. */
  readonly sequence: number;
  readonly seal: string;
  /** Entries that were acknowledged and could not be read. */
  readonly lost: number;
  /** The highest sequence that anything stored has. */
  readonly top: number;
  /** The snapshot and the entries since as they are stored, and the bytes of these entries. */
  readonly snapshot: SnapshotRow | undefined;
  readonly rows: readonly EntryRow[];
  readonly bytes: number;
  /** A newer program wrote it: it cannot be read here, and must not be written. */
  readonly newer: boolean;
  /** What was recovered and what was lost, a sentence each; none when all is well. */
  readonly notes: readonly string[];
}

/**
 * Reads the newest snapshot that is whole, and the entries after it up to the first that is missing or damaged. Never
 * throws on what is stored.
 */
export async function recover({ book, snapshots, entries }: StoredRows): Promise<Recovered> {
  const notes: string[] = [];
  const top = Math.max(
    ...[0, book?.head, entries.at(-1)?.sequence, snapshots.at(-1)?.sequence].filter(isSequence),
  );
  const base = {
    content: undefined,
    entries: [],
    sequence: 0,
    seal: '',
    top,
    snapshot: undefined,
    rows: [],
    bytes: 0,
  };
  const begin = await newestWhole(snapshots, notes);
  if (begin.newer) return { ...base, lost: 0, newer: true, notes };
  const { row, copy } = begin;
  if (!row || !copy?.edit) {
    notes.push(
      'No saved copy of this book can be read, so the book opens empty. If you have a version or a file of it, restore that.',
    );
    return { ...base, lost: top, newer: false, notes };
  }
  const read: Entry[] = [];
  const rows: EntryRow[] = [];
  let { sequence, chain: seal } = row;
  let bytes = 0;
  for (const entry of entries) {
    if (entry.sequence <= row.sequence) continue;
    const next = entry.sequence === sequence + 1 ? await readEntry(entry, seal) : undefined;
    if (next && !next.ok && next.why === 'newer') return { ...base, lost: 0, newer: true, notes };
    if (!next?.ok) break;
    read.push(next.value);
    rows.push(entry);
    bytes += entry.bytes.length;
    seal = next.seal;
    sequence++;
  }
  const lost = top - sequence;
  if (lost > 0)
    notes.push(
      `${lost === 1 ? 'The last change' : `The last ${lost} changes`} could not be read back from the browser's storage and ${lost === 1 ? 'is' : 'are'} lost; everything before ${lost === 1 ? 'it' : 'them'} is here${after(read)}.`,
    );
  return {
    content: copy.edit,
    past: copy.past,
    entries: read,
    sequence,
    seal,
    lost,
    top,
    snapshot: row,
    rows,
    bytes,
    newer: false,
    notes,
  };
}

const isSequence = (value: unknown): value is number => Number.isSafeInteger(value);

/** The last change that is there, in words. */
export const after = (entries: readonly Entry[]): string => {
  const last = entries.at(-1);
  return last ? `, the last being “${last.words}”` : '';
};

interface Begin {
  readonly row?: SnapshotRow;
  readonly copy?: Copy;
  readonly newer: boolean;
}

/** The newest snapshot that can be read; each damaged one on the way is noted. */
async function newestWhole(snapshots: readonly SnapshotRow[], notes: string[]): Promise<Begin> {
  for (const row of snapshots.toReversed()) {
    const read = await readSnapshot(row);
    if (read.ok) {
      if (notes.length)
        notes.push(
          `The book was rebuilt from the copy of ${moment(row.time)} before it and the changes since.`,
        );
      return { row, copy: read.value, newer: false };
    }
    if (read.why === 'newer') return { newer: true };
    notes.push(`The saved copy of ${moment(row.time)} is damaged and was not used.`);
  }
  return { newer: false };
}

/** A time as ISO 8601 date and minute, local time. */
export function moment(time: unknown): string {
  if (typeof time !== 'number' || Number.isNaN(new Date(time).getTime())) return 'an unknown time';
  const date = new Date(time);
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())} ${two(date.getHours())}:${two(date.getMinutes())}`;
}
