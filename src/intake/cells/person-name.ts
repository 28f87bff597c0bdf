/** Names of people as they are compared. */
const LETTERS: Readonly<Record<string, string>> = {
  ß: 'ss',
  ø: 'o',
  đ: 'd',
  ð: 'd',
  ł: 'l',
  æ: 'ae',
  œ: 'oe',
  þ: 'th',
  ı: 'i',
};

/** Case, blanks and marks between words do not matter. */
export const spellingKey = (text: string): string =>
  text
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, ' ')
    .trim();

/** Neither do accents; ä, ö, ü are the same as ae, oe, ue. */
export const accentKey = (text: string): string =>
  spellingKey(text)
    .replace(/[ßøđðłæœþı]/g, (letter) => LETTERS[letter]!)
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/([aou])e/g, '$1');

/** Given names of a person, without accents: all but the last word, or what comes after a comma. */
export const givenNames = (name: string): readonly string[] => {
  const comma = name.indexOf(',');
  const words = accentKey(comma < 0 ? name : name.slice(comma + 1)).split(' ');
  return comma < 0 && words.length > 1 ? words.slice(0, -1) : words;
};
