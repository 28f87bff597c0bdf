import type { Address } from '../ast.ts';

/** A word that reads as the address of a cell, whatever its case: `B7`, `$B$7`, `leg1`. */
const ADDRESS = /^(\$?)([A-Za-z]{1,3})(\$?)([0-9]+)$/;

export const readsAsAddress = (word: string): boolean => ADDRESS.test(word);

/** The address a word is, or undefined. Rows are written from 1 and kept from 0; row 0 does not exist. */
export function addressFrom(word: string): Address | undefined {
  const parts = ADDRESS.exec(word);
  if (!parts) return undefined;
  const row = Number(parts[4]) - 1;
  if (row < 0 || !Number.isSafeInteger(row)) return undefined;
  return {
    column: columnFromLetters(parts[2]!),
    row,
    columnFixed: parts[1] === '$',
    rowFixed: parts[3] === '$',
  };
}

function columnFromLetters(letters: string): number {
  let column = 0;
  for (const letter of letters.toUpperCase()) column = column * 26 + (letter.charCodeAt(0) - 64);
  return column - 1;
}

/** The letters of a column that counts from 0: A, B, … Z, AA, … */
export function lettersOf(column: number): string {
  let rest = column + 1;
  let letters = '';
  while (rest > 0) {
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
    rest = Math.floor((rest - 1) / 26);
  }
  return letters;
}

export function addressText(at: Address): string {
  return `${at.columnFixed ? '$' : ''}${lettersOf(at.column)}${at.rowFixed ? '$' : ''}${at.row + 1}`;
}
