import { sha256 } from '@noble/hashes/sha2.js';

const hex = (bytes: Uint8Array): string =>
  Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');

/** SHA-256 of a file, hexadecimal, at once. */
export const hashOf = (bytes: Uint8Array): string => hex(sha256(bytes));

/** The same from the platform's own implementation, four times as fast, where there is one (not on plain http). */
export async function hashOfSoon(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const subtle = globalThis.crypto?.subtle;
  return subtle ? hex(new Uint8Array(await subtle.digest('SHA-256', bytes))) : hashOf(bytes);
}
