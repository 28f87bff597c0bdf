import type { Vocabulary } from './complete.ts';

/** A text and what is chosen in it. */
export interface Chosen {
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

/** Where a name that is pointed at would go; null where none can stand. */
export function placeForName({ text, from, to }: Chosen, words: Vocabulary): Omit<Chosen, 'text'> | null {
  if (from < to) return { from, to };
  const before = text.slice(0, from);
  if (/(^|[-+*/^&=<>(,;{:])\s*$/.test(before)) return { from, to };
  // A word that is no name yet gives way to the one pointed at.
  const word = /[\p{L}_][\p{L}\p{N}_.]*$/u.exec(before)?.[0];
  if (word === undefined || isKnown(word.toLowerCase(), words)) return null;
  return { from: from - word.length, to };
}

/** True where an arrow key can only mean a cell: a name is missing, and nothing follows that the caret could go to. */
export function lacksName({ text, from, to }: Chosen): boolean {
  return (
    from === to && /[-+*/^&=<>(,;{:]\s*$/.test(text.slice(0, from)) && /^[\s)\]},;]*$/.test(text.slice(to))
  );
}

function isKnown(word: string, { functions, outline, sheet }: Vocabulary): boolean {
  const named = ({ name }: { readonly name: string }) => name.toLowerCase() === word;
  if (sheet?.columns.some(named) || outline?.names.some(named) || functions.some(named)) return true;
  if (/^[a-z]{1,3}\d+$|^(true|false)$/.test(word)) return true;
  const [other, column] = word.split('.', 2);
  const found = outline?.sheets.find(({ name }) => name.toLowerCase() === other);
  return found?.columns.some(({ name }) => name.toLowerCase() === column) ?? false;
}
