/** UTF-32 as text: the platform's decoder does not know it (the Unicode Standard 15.0, section 3.10, D99 to D101). */

const BIGGEST = 0x10ffff;

export const isUtf32 = (encoding: string): boolean => /^utf-32(le|be)$/i.test(encoding);

/** Decodes piece by piece, without the byte order mark; what is no character becomes U+FFFD. */
export function* utf32Pieces(bytes: Uint8Array, encoding: string, size: number): Generator<string> {
  const little = encoding.toLowerCase() === 'utf-32le';
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const units = Math.floor(bytes.length / 4);
  const step = Math.max(1, size >> 2);
  for (let from = 0; from < units; from += step) {
    let text = '';
    for (let i = from; i < Math.min(units, from + step); i++) {
      const point = view.getUint32(4 * i, little);
      if (i === 0 && point === 0xfeff) continue;
      const isCharacter = point <= BIGGEST && (point < 0xd800 || point > 0xdfff);
      text += isCharacter ? String.fromCodePoint(point) : '\ufffd';
    }
    yield text;
  }
  // Bytes that are left over are part of a character.
  if (bytes.length % 4 !== 0) yield '\ufffd';
}
