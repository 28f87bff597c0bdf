import type { BookRow, EntryRow, SnapshotRow } from './database.ts';
import { FORMAT } from './entry.ts';
import { type Found, recordOf, recordsIn, type Source } from './record.ts';
import type { StoredRows } from './recover.ts';

/** What a segment says of its book. */
export interface About extends Pick<BookRow, 'id' | 'created' | 'origin' | 'writer'> {
  /** Format of its entries and of its copy. */
  readonly format: number;
  readonly title: string;
  /** Which of the writer's segments it is. */
  readonly number: number;
}

type CopyHead = Omit<SnapshotRow, 'bytes' | 'book'>;
interface EntryHead extends Omit<EntryRow, 'bytes' | 'book'> {
  /** Of the book after it. */
  readonly title: string;
  readonly time: number;
}

type PlacedCopy = Found & { readonly head: CopyHead };
type PlacedEntry = Found & { readonly head: EntryHead };

/** A stretch of a book's second journal: a copy of the whole book, and what happened after it. */
export interface Segment {
  readonly about: About;
  readonly copy: PlacedCopy;
  readonly entries: readonly PlacedEntry[];
  /** Of its last entry. */
  readonly sequence: number;
  readonly seal: string;
  /** Where its last record ends, and whether something stands behind that cannot be read. */
  readonly end: number;
  readonly cut: boolean;
}

/** Bytes at the beginning, in which it says whose it is. They are written last: without them a file is no segment. */
export const FRONT = 4_096;

export function frontOf(about: About): Uint8Array<ArrayBuffer> {
  const title = about.title.slice(0, 200);
  const { origin } = about;
  const bytes = recordOf({
    ...about,
    title,
    ...(origin === undefined ? {} : { origin: origin.slice(0, 200) }),
  });
  if (bytes.length > FRONT) throw new Error('a front too long');
  return bytes;
}

export const copyHead = ({ sequence, chain, time, seal }: SnapshotRow): CopyHead => ({
  sequence,
  chain,
  time,
  seal,
});

export const entryRecord = ({ sequence, seal, bytes }: EntryRow, title: string): Uint8Array<ArrayBuffer> =>
  recordOf({ sequence, seal, title: title.slice(0, 200), time: Date.now() } satisfies EntryHead, bytes);

/** Walks through a file, without reading what is in its copy and entries; undefined when it is no segment. */
export function segmentIn(source: Source): Segment | undefined {
  const [front] = recordsIn({
    size: FRONT,
    read: (at, length) => source.read(at, Math.min(length, FRONT - at)),
  });
  if (!front) return undefined;
  const about = front.head as About;
  const behind = {
    size: source.size - FRONT,
    read: (at: number, length: number) => source.read(at + FRONT, length),
  };
  const [copy, ...entries] = [...recordsIn(behind)] as [PlacedCopy?, ...PlacedEntry[]];
  if (!copy) return undefined;
  const last = entries.at(-1);
  const end = FRONT + (last ?? copy).end;
  return {
    about,
    copy,
    entries,
    sequence: last?.head.sequence ?? copy.head.sequence,
    seal: last?.head.seal ?? copy.head.chain,
    end,
    cut: end < source.size,
  };
}

/** All of it as the rows of a database would have it. */
export function rowsOf({ about, copy, entries, sequence, seal }: Segment, source: Source): StoredRows {
  const { number: _, format, ...of } = about;
  const bodyOf = ({ body: { at, length } }: Pick<Found, 'body'>) => source.read(FRONT + at, length);
  const last = entries.at(-1)?.head;
  const changed = last?.time ?? copy.head.time;
  return {
    book: { ...of, title: last?.title ?? of.title, format, opened: changed, changed, head: sequence, seal },
    snapshots: [{ ...copy.head, book: of.id, bytes: bodyOf(copy) }],
    entries: entries.map((entry) => {
      const { sequence, seal } = entry.head;
      return { book: of.id, sequence, seal, bytes: bodyOf(entry) };
    }),
  };
}

/** True for one that a newer program wrote. */
export const isNewer = ({ about }: Segment): boolean => about.format > FORMAT;

/** The later of two: of two writers the one that came after, and of its segments the last. */
export const later = (a: Segment, b: Segment): boolean =>
  a.about.writer === b.about.writer ? a.about.number > b.about.number : a.about.writer > b.about.writer;
