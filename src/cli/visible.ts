/*
 * Data may hold characters that a terminal obeys (C0 and C1 of ECMA-48) or that turn the order of letters around
 * (bidirectional marks of Unicode Standard Annex 9): from a file of somebody else they could hide or fake a line.
 */

/** All controls but tab and line feed, and the marks that change direction. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters that are meant
const obeyed = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;

/** A text that does nothing to a terminal: such characters are written as `\u001B`, which JSON reads as themselves. */
export const visible = (text: string): string => text.replace(obeyed, escaped);

/** The same for a value that has to stay on its line and in its place. */
export const onOneLine = (text: string): string => visible(text).replace(/[\t\n]/g, escaped);

const escaped = (sign: string): string =>
  `\\u${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`;
