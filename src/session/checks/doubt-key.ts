/** By what an accepted check is known again after names have changed. */
import type { Book } from '../../book/model.ts';
import { nameKey } from '../../book/names.ts';

const WORD = /[\p{L}_][\p{L}\p{N}_]*/gu;
/** A piece of a formula that a sentence cuts short: where it ends depends on how long its names are. */
const CUT = /[^…]*…/gu;
/** How many rows have the same error: it may grow without the doubt being another one. */
const COUNT = / \([\d,]+ rows\)$/;

/**
 * A sentence about a formula with the ids of sheets, columns and named cells in place of their names, so that what was
 * accepted stays accepted when one of them is renamed. `sheet` is the one that the formula is in.
 */
export function nameless(sentence: string, book: Book, sheet: string): string {
  const ids = new Map<string, string>();
  for (const { name, sheet: of, column, row } of book.names.values())
    ids.set(nameKey(name), `${of} ${column} ${row}`);
  for (const { id, name, columns } of book.sheets) {
    ids.set(nameKey(name), id);
    // Of columns with the same name the formula means the one beside it.
    for (const column of columns)
      if (id === sheet || !ids.has(nameKey(column.name))) ids.set(nameKey(column.name), column.id);
  }
  return sentence
    .replace(COUNT, '')
    .replace(CUT, '…')
    .replace(WORD, (word) => ids.get(nameKey(word)) ?? word);
}

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
