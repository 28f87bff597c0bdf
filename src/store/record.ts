import { sha256 } from '@noble/hashes/sha2.js';

/*
 * A journal as one file: records one behind the other. Each begins with 48 bytes: a mark, the length of its head, the
 * length of its body, and the SHA-256 of these and of the head. The head is JSON. The body is taken as it is: the head
 * carries its seal, which whoever reads it holds against it. So a file is walked through without reading the bodies, and a
 * file that was cut or damaged is read up to the place.
 */

const MARK = 0x324a424c;
const COUNTS = 16;
const FRONT = COUNTS + 32;
/** No head is larger; what says so is damaged. */
const LARGEST_HEAD = 1 << 20;

const noBytes = new Uint8Array(0);

/** Where records are read from. */
export interface Source {
  readonly size: number;
  /** Fewer bytes where the source ends. */
  read(at: number, length: number): Uint8Array<ArrayBuffer>;
}

/** A record that is whole, but for its body, which nobody has looked at. */
export interface Found {
  readonly head: unknown;
  readonly body: { readonly at: number; readonly length: number };
  /** Where the next one begins. */
  readonly end: number;
}

/** The front and the head of a record; its body is to follow at once. */
export function recordHead(head: object, bodyLength = 0): Uint8Array<ArrayBuffer> {
  const json = new TextEncoder().encode(JSON.stringify(head));
  const bytes = new Uint8Array(FRONT + json.length);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, MARK, true);
  view.setUint32(4, json.length, true);
  view.setFloat64(8, bodyLength, true);
  bytes.set(json, FRONT);
  bytes.set(checksum(bytes.subarray(0, COUNTS), json), COUNTS);
  return bytes;
}

/** A whole record in one run of bytes. */
export function recordOf(head: object, body: Uint8Array = noBytes): Uint8Array<ArrayBuffer> {
  const front = recordHead(head, body.length);
  const bytes = new Uint8Array(front.length + body.length);
  bytes.set(front);
  bytes.set(body, front.length);
  return bytes;
}

/** The records from the beginning to the first that is cut or damaged. Never throws on what stands there. */
export function* recordsIn(source: Source): Generator<Found> {
  for (let at = 0; ; ) {
    const found = recordAt(source, at);
    if (!found) return;
    yield found;
    at = found.end;
  }
}

function recordAt(source: Source, at: number): Found | undefined {
  const front = source.read(at, FRONT);
  if (front.length < FRONT) return undefined;
  const view = new DataView(front.buffer, front.byteOffset, FRONT);
  const length = view.getUint32(4, true);
  const bodyLength = view.getFloat64(8, true);
  const start = at + FRONT + length;
  const fits = Number.isSafeInteger(bodyLength) && bodyLength >= 0 && start + bodyLength <= source.size;
  if (view.getUint32(0, true) !== MARK || length > LARGEST_HEAD || !fits) return undefined;
  const json = source.read(at + FRONT, length);
  const sum = checksum(front.subarray(0, COUNTS), json);
  if (!sum.every((byte, i) => byte === front[COUNTS + i])) return undefined;
  try {
    const head: unknown = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(json));
    return { head, body: { at: start, length: bodyLength }, end: start + bodyLength };
  } catch {
    return undefined;
  }
}

const checksum = (counts: Uint8Array, head: Uint8Array): Uint8Array =>
  sha256.create().update(counts).update(head).digest();
