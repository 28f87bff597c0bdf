/**
 * Names a doubt by what it is about, short enough for a key of the book: 53 bits of two multiplicative hashes over the
 * UTF-16 units (FNV-1a's prime and a golden-ratio step), enough to tell a book's doubts apart.
 */
export function keyOf(about: string, ...parts: readonly (string | number)[]): string {
  const text = parts.join('\u0000');
  let a = 0x811c9dc5;
  let b = 0x9e3779b9;
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    a = Math.imul(a ^ unit, 0x01000193);
    b = Math.imul(b ^ unit, 0x85ebca6b) ^ (b >>> 13);
  }
  return `${about} ${((a >>> 0) * 2 ** 21 + (b >>> 11)).toString(36)}`;
}
