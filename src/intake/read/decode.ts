/** From bytes to text: which encoding, and how sure that is. */
import chardet from 'chardet';
import type { Encoding, Finding, Progress } from '../api.ts';
import { IntakeRefusal, note } from '../sentences/index.ts';
import { isUtf32, utf32Pieces } from './utf-32.ts';

export interface EncodingFinding {
  readonly encoding: Finding<Encoding>;
  readonly byteOrderMark: boolean;
}

/** What people are likely to have meant when the first choice looks wrong. */
const others: readonly Encoding[] = ['utf-8', 'windows-1252', 'windows-1250', 'macintosh', 'utf-16le'];
const besides = (encoding: Encoding): readonly Encoding[] => others.filter((other) => other !== encoding);

/** Bytes looked at for zeros and control characters. */
const HEAD = 64 * 1024;
/** Bytes read between two moments at which the work can be cancelled. */
const STEP = 1024 * 1024;

/**
 * Finds the encoding of a text file from all of its bytes.
 * @throws IntakeRefusal when the bytes are no text
 */
export function* findingEncoding(bytes: Uint8Array, name: string): Generator<Progress, EncodingFinding> {
  const marked = byteOrderMarkOf(bytes);
  if (marked)
    return {
      encoding: {
        value: marked,
        certainty: 'sure',
        because: note('byte-order-mark', { encoding: marked.toUpperCase() }),
        others: besides(marked),
      },
      byteOrderMark: true,
    };
  const wide = wideOf(bytes);
  if (wide) {
    const because = note('zero-bytes', { encoding: wide.toUpperCase() });
    return {
      encoding: { value: wide, certainty: 'likely', because, others: besides(wide) },
      byteOrderMark: false,
    };
  }
  refuseJunk(bytes, name);
  return { encoding: yield* narrowOf(bytes), byteOrderMark: false };
}

function byteOrderMarkOf(b: Uint8Array): Encoding | null {
  // Before UTF-16, whose mark begins the same.
  if (b[0] === 0xff && b[1] === 0xfe && b[2] === 0 && b[3] === 0) return 'utf-32le';
  if (b[0] === 0 && b[1] === 0 && b[2] === 0xfe && b[3] === 0xff) return 'utf-32be';
  if (b[0] === 0xef && b[1] === 0xbb && b[2] === 0xbf) return 'utf-8';
  if (b[0] === 0xff && b[1] === 0xfe) return 'utf-16le';
  if (b[0] === 0xfe && b[1] === 0xff) return 'utf-16be';
  return null;
}

/** UTF-16 without a mark: texts of western letters have a zero in every other byte. */
function wideOf(bytes: Uint8Array): Encoding | null {
  const end = Math.min(bytes.length, HEAD) & ~1;
  if (end < 4) return null;
  let even = 0;
  let odd = 0;
  for (let i = 0; i < end; i += 2) {
    if (bytes[i] === 0) even++;
    if (bytes[i + 1] === 0) odd++;
  }
  const pairs = end / 2;
  if (odd > 0.4 * pairs && even < 0.05 * pairs) return 'utf-16le';
  if (even > 0.4 * pairs && odd < 0.05 * pairs) return 'utf-16be';
  return null;
}

/** Control characters other than tab and line ends hardly occur in text; a tenth of them or any run of zeros is no text. */
function refuseJunk(bytes: Uint8Array, name: string): void {
  const end = Math.min(bytes.length, HEAD);
  let control = 0;
  let zeros = 0;
  for (let i = 0; i < end; i++) {
    const byte = bytes[i]!;
    if (byte === 0) zeros++;
    else if (byte < 32 && byte !== 9 && byte !== 10 && byte !== 13 && byte !== 12) control++;
  }
  if (control + zeros > 0.02 * end + 2) throw new IntakeRefusal('not-a-table', { name, what: 'binary data' });
}

export interface Utf8Count {
  /** Bytes above 127. */
  readonly beyond: number;
  /** Valid sequences of two bytes and more. */
  readonly sequences: number;
  readonly bad: number;
}

/** Counts UTF-8 sequences and bytes that are none (RFC 3629). */
function* countingUtf8(bytes: Uint8Array): Generator<Progress, Utf8Count> {
  let beyond = 0;
  let sequences = 0;
  let bad = 0;
  const n = bytes.length;
  let pause = STEP;
  for (let i = 0; i < n; ) {
    if (i >= pause) {
      yield { done: i, total: n, about: 'finding the encoding' };
      pause += STEP;
    }
    const first = bytes[i]!;
    if (first < 0x80) {
      i++;
      continue;
    }
    const length =
      first >= 0xc2 && first < 0xe0
        ? 2
        : first >= 0xe0 && first < 0xf0
          ? 3
          : first >= 0xf0 && first < 0xf5
            ? 4
            : 1;
    let valid = length > 1 && i + length <= n;
    for (let k = 1; valid && k < length; k++) valid = (bytes[i + k]! & 0xc0) === 0x80;
    const second = bytes[i + 1] ?? 0;
    // Overlong forms, surrogates and numbers beyond U+10FFFF.
    if (valid && ((first === 0xe0 && second < 0xa0) || (first === 0xed && second >= 0xa0))) valid = false;
    if (valid && ((first === 0xf0 && second < 0x90) || (first === 0xf4 && second >= 0x90))) valid = false;
    if (valid) {
      sequences++;
      beyond += length;
      i += length;
    } else {
      bad++;
      beyond++;
      i++;
    }
  }
  return { beyond, sequences, bad };
}

/** One byte a letter, or UTF-8. */
function* narrowOf(bytes: Uint8Array): Generator<Progress, Finding<Encoding>> {
  const { beyond, sequences, bad } = yield* countingUtf8(bytes);
  if (beyond === 0) return { value: 'utf-8', certainty: 'sure', because: note('only-ascii') };
  if (bad === 0)
    return {
      value: 'utf-8',
      certainty: 'sure',
      because: note('valid-utf-8', { count: beyond }),
      others: besides('utf-8'),
    };
  // A single damaged byte in a file full of valid sequences is damage, not another encoding.
  if (sequences >= 10 * bad)
    return {
      value: 'utf-8',
      certainty: 'likely',
      because: note('damaged-utf-8', { count: bad }),
      others: besides('utf-8'),
    };
  const sample = linesBeyondAscii(bytes);
  const value = westernUnlessSure(sample);
  const example = exampleOf(decodeAll(sample, value));
  return {
    value,
    certainty: value === 'windows-1252' ? 'likely' : 'doubtful',
    because: note('not-utf-8', { count: beyond, encoding: value, example }),
    others: besides(value),
  };
}

/** Statistics need text: the lines that hold bytes beyond ASCII, up to 64 KB. */
function linesBeyondAscii(bytes: Uint8Array): Uint8Array {
  const out = new Uint8Array(HEAD);
  let used = 0;
  for (let i = 0; i < bytes.length && used < HEAD; i++) {
    if (bytes[i]! < 0x80) continue;
    // The surrounding word is enough, and keeps numbers out of the statistics.
    let from = i;
    while (from > 0 && i - from < 40 && bytes[from - 1]! > 0x20) from--;
    let to = i;
    while (to < bytes.length && to - i < 40 && bytes[to]! > 0x20) to++;
    const part = bytes.subarray(from, Math.min(to, from + HEAD - used - 1));
    out.set(part, used);
    used += part.length;
    if (used < HEAD) out[used++] = 0x20;
    i = to;
  }
  return out.subarray(0, used);
}

/** Western Europe's encoding, unless the statistics speak clearly for another that can be read. */
function westernUnlessSure(sample: Uint8Array): Encoding {
  const matches = chardet.analyse(sample);
  const western = matches.find((match) => match.name === 'ISO-8859-1' || match.name === 'windows-1252');
  const best = matches[0];
  if (!best || /8859-1$|1252$|ASCII|UTF/i.test(best.name)) return 'windows-1252';
  if (best.confidence < 40 || best.confidence < (western?.confidence ?? 0) + 10) return 'windows-1252';
  try {
    return new TextDecoder(best.name).encoding;
  } catch {
    return 'windows-1252';
  }
}

const exampleOf = (text: string): string =>
  text.match(/[^\s,;|\t"]*\P{ASCII}[^\s,;|\t"]*/u)?.[0].slice(0, 30) ?? '';

/** Windows-1252 from 0x80 to 0x9F (WHATWG Encoding standard, index windows-1252). */
const HIGH =
  '\u20ac\u0081\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\u008d\u017d\u008f' +
  '\u0090\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\u009d\u017e\u0178';

/** Some versions of Node decode windows-1252 as ISO-8859-1; the difference is these 32 characters. */
const mend = (text: string): string =>
  text.replace(/[\u0080-\u009f]/g, (control) => HIGH[control.charCodeAt(0) - 0x80]!);

/** The whole text at once. */
export const decodeAll = (bytes: Uint8Array, encoding: Encoding): string =>
  [...decodePieces(bytes, encoding)].join('');

/** Decodes piece by piece, without the byte order mark. A character across two pieces stays whole. */
export function* decodePieces(bytes: Uint8Array, encoding: Encoding, size = 1 << 17): Generator<string> {
  if (isUtf32(encoding)) {
    yield* utf32Pieces(bytes, encoding, size);
    return;
  }
  const decoder = new TextDecoder(encoding);
  const western = decoder.encoding === 'windows-1252';
  for (let from = 0; from < bytes.length; from += size) {
    const last = from + size >= bytes.length;
    const text = decoder.decode(bytes.subarray(from, from + size), { stream: !last });
    yield western ? mend(text) : text;
  }
}

/** True when a text can be decoded from it. */
export function isEncoding(name: string): boolean {
  if (isUtf32(name)) return true;
  try {
    return new TextDecoder(name).encoding !== '';
  } catch {
    return false;
  }
}
