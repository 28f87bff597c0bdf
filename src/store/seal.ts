import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';

/** Above this the platform's own SHA-256 is faster in spite of its detour over another thread. */
const LARGE = 256 * 1024;

async function digest(bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array> {
  const subtle = bytes.length > LARGE ? globalThis.crypto?.subtle : undefined;
  return subtle ? new Uint8Array(await subtle.digest('SHA-256', bytes)) : sha256(bytes);
}

/** Where sealed bytes belong: whole bytes in a place that is not theirs do not fit either. */
export interface Setting {
  readonly book: string;
  readonly sequence: number;
  /** Seal of what comes before; a journal is a chain, in which nothing can be missing or swapped. */
  readonly before: string;
}

/** A checksum over bytes and the place where they belong: SHA-256, hexadecimal. */
export async function sealOf(
  bytes: Uint8Array<ArrayBuffer>,
  { book, sequence, before }: Setting,
): Promise<string> {
  const inside = bytesToHex(await digest(bytes));
  return bytesToHex(sha256(new TextEncoder().encode([book, sequence, before, inside].join('\n'))));
}
