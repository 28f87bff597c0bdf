import { Inflate } from 'fflate';
import { IntakeRefusal } from '../../sentences/index.ts';

/** One file inside a ZIP archive (PKWARE APPNOTE 6.3). */
export interface Entry {
  readonly name: string;
  readonly method: number;
  readonly packed: number;
  readonly size: number;
  readonly at: number;
}

/** Unpacked bytes that may be read from one workbook; a small file that claims or gives more is a trap. */
export const MOST_UNPACKED = 300 * 1024 * 1024;
const MOST_ENTRIES = 10_000;
/** Packed bytes handed over at once: deflate makes at most 1032 of one, so one step gives 16 MB at most. */
const STEP = 16 * 1024;

const END = 0x06054b50;
const HEADER = 0x02014b50;
const LOCAL = 0x04034b50;

/** The directory of an archive. @throws IntakeRefusal when it is damaged, locked or too large */
export function readDirectory(bytes: Uint8Array, name: string): Map<string, Entry> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const damaged = (): never => {
    throw new IntakeRefusal('workbook-damaged', { name });
  };
  let end = bytes.length - 22;
  const first = Math.max(0, end - 65_535);
  while (end >= first && view.getUint32(end, true) !== END) end--;
  if (end < first) damaged();
  const count = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  if (count > MOST_ENTRIES || at === 0xffffffff)
    throw new IntakeRefusal('workbook-too-large', { name, largest: MOST_UNPACKED });
  const entries = new Map<string, Entry>();
  const utf8 = new TextDecoder();
  for (let i = 0; i < count; i++) {
    if (at + 46 > bytes.length || view.getUint32(at, true) !== HEADER) damaged();
    if (view.getUint16(at + 8, true) & 1) throw new IntakeRefusal('workbook-locked', { name });
    const nameLength = view.getUint16(at + 28, true);
    const entry: Entry = {
      name: utf8.decode(bytes.subarray(at + 46, at + 46 + nameLength)),
      method: view.getUint16(at + 10, true),
      packed: view.getUint32(at + 20, true),
      size: view.getUint32(at + 24, true),
      at: view.getUint32(at + 42, true),
    };
    entries.set(entry.name, entry);
    at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return entries;
}

/** Counts what is unpacked from one workbook, over all its entries. */
export class Allowance {
  private left: number;
  private readonly name: string;
  private readonly most: number;
  constructor(name: string, most: number) {
    this.name = name;
    this.most = most;
    this.left = most;
  }
  take(bytes: number): void {
    this.left -= bytes;
    if (this.left < 0) throw new IntakeRefusal('workbook-too-large', { name: this.name, largest: this.most });
  }
}

/** Unpacks an entry piece by piece, never more than is allowed, whatever its header claims. @throws IntakeRefusal */
export function* unpack(
  bytes: Uint8Array,
  entry: Entry,
  allowance: Allowance,
  name: string,
): Generator<Uint8Array> {
  if (entry.size > MOST_UNPACKED)
    throw new IntakeRefusal('workbook-too-large', { name, largest: MOST_UNPACKED });
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (entry.at + 30 > bytes.length || view.getUint32(entry.at, true) !== LOCAL)
    throw new IntakeRefusal('workbook-damaged', { name });
  const begin = entry.at + 30 + view.getUint16(entry.at + 26, true) + view.getUint16(entry.at + 28, true);
  const end = Math.min(begin + entry.packed, bytes.length);
  if (entry.method === 0) {
    for (let from = begin; from < end; from += STEP * 8) {
      const piece = bytes.subarray(from, Math.min(end, from + STEP * 8));
      allowance.take(piece.length);
      yield piece;
    }
    return;
  }
  if (entry.method !== 8) throw new IntakeRefusal('workbook-damaged', { name });
  let out: Uint8Array[] = [];
  const inflate = new Inflate((piece) => {
    allowance.take(piece.length);
    out.push(piece);
  });
  for (let from = begin; from < end; from += STEP) {
    try {
      inflate.push(bytes.subarray(from, Math.min(end, from + STEP)), from + STEP >= end);
    } catch (error) {
      if (error instanceof IntakeRefusal) throw error;
      throw new IntakeRefusal('workbook-damaged', { name });
    }
    const ready = out;
    out = [];
    yield* ready;
  }
}
