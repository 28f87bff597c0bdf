import type { Edit } from '../book/edit.ts';
import { decode, encode } from './codec.ts';
import type { EntryRow, SnapshotRow } from './database.ts';
import { sealOf } from './seal.ts';

/** Format of entries and snapshots that this program writes, and the newest that it reads. */
export const FORMAT = 1;

/** One thing that happened to a book. */
export interface Entry {
  readonly kind: 'command' | 'undo' | 'redo';
  readonly words: string;
  readonly edit: Edit;
}

/** What a row that can be trusted says; a row that cannot be read says why. */
export type Read<T> =
  | { readonly ok: true; readonly value: T; readonly seal: string }
  | { readonly ok: false; readonly why: 'damaged' | 'newer' };

export const entryBytes = ({ kind, words, edit }: Entry): Uint8Array<ArrayBuffer> =>
  encode({ format: FORMAT, kind, words, edit });

/** What a snapshot says: the edit that makes the book of a new one, and what could be undone and redone in it, still packed. */
export interface Copy {
  readonly edit: Edit;
  readonly past?: unknown;
}

/** A copy of the book as its entry `sequence`, which has the seal `chain`, left it. */
export async function snapshotRow(
  book: string,
  sequence: number,
  chain: string,
  content: Edit,
  past?: Uint8Array,
): Promise<SnapshotRow> {
  const bytes = encode({ format: FORMAT, edit: content, past });
  const row = { book, sequence, chain, time: Date.now(), bytes };
  return { ...row, seal: await sealOf(bytes, { book, sequence, before: snapshotChain(row) }) };
}

/** Reads an entry that must follow the one with the seal `before`. Never throws: anything can stand in a damaged row. */
export const readEntry = (row: EntryRow, before: string): Promise<Read<Entry>> => read<Entry>(row, before);

/** Reads the content of a snapshot. */
export const readSnapshot = (row: SnapshotRow): Promise<Read<Copy>> => read(row, snapshotChain(row));

/** What is sealed into a snapshot besides its bytes. */
const snapshotChain = ({ chain, time }: Pick<SnapshotRow, 'chain' | 'time'>): string =>
  `snapshot ${time} ${chain}`;

async function read<T>(row: EntryRow | SnapshotRow, before: string): Promise<Read<T>> {
  try {
    const { book, sequence, bytes } = row;
    if (!(bytes instanceof Uint8Array)) return { ok: false, why: 'damaged' };
    const seal = await sealOf(bytes, { book, sequence, before });
    if (seal !== row.seal) return { ok: false, why: 'damaged' };
    const value = decode(bytes) as T & { readonly format: number };
    return value.format > FORMAT ? { ok: false, why: 'newer' } : { ok: true, value, seal };
  } catch {
    return { ok: false, why: 'damaged' };
  }
}
