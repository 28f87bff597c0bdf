import { distance } from 'fastest-levenshtein';

/** Somebody of the roster: what cells say when they mean this person, and other texts that mean the same. */
export interface Person {
  readonly value: string;
  readonly also: readonly string[];
}

export type SameBy = 'decision' | 'spelling' | 'accents' | 'order' | 'identifier';

export interface WhoReport {
  /** Name of the column. */
  readonly column: string;
  /** Name of the roster's sheet. */
  readonly roster: string;
  /** Texts that mean somebody of the roster but are written otherwise; they get the roster's spelling. */
  readonly same: readonly {
    readonly text: string;
    readonly value: string;
    readonly by: SameBy;
    readonly rows: number;
  }[];
  /** Texts that are close to somebody: left as they are until somebody says that it is the same person. */
  readonly close: readonly {
    readonly text: string;
    readonly values: readonly string[];
    readonly rows: number;
  }[];
  /** Texts that mean nobody of the roster. */
  readonly unknown: readonly { readonly text: string; readonly rows: number }[];
  /** How many of the distinct texts mean somebody. */
  readonly matched: number;
}

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
const spellingKey = (text: string): string =>
  text
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, ' ')
    .trim();

/** Neither do accents; ä, ö, ü are the same as ae, oe, ue. */
const accentKey = (text: string): string =>
  spellingKey(text)
    .replace(/[ßøđðłæœþı]/g, (letter) => LETTERS[letter]!)
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/([aou])e/g, '$1');

/** Nor the order of the names. */
const orderKey = (text: string): string => accentKey(text).split(' ').sort().join(' ');

const identifierKey = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replace(/^0+(?=\d)/, '');

/** People by a key; a key that two of them share means nobody. */
function indexBy(
  people: readonly Person[],
  key: (text: string) => string,
  texts: (p: Person) => readonly string[],
) {
  const index = new Map<string, Person | null>();
  for (const person of people)
    for (const text of texts(person)) {
      const k = key(text);
      if (k === '') continue;
      const there = index.get(k);
      index.set(k, there === undefined || there === person ? person : null);
    }
  return index;
}

/**
 * Says who is meant by each text. Case, blanks, accents and the order of names may differ; a close spelling is only
 * proposed. `decided` are earlier answers: a text and the person it means.
 */
export function whoIsWho(
  texts: ReadonlyMap<string, number>,
  people: readonly Person[],
  decided: Readonly<Record<string, string>> = {},
): Omit<WhoReport, 'column' | 'roster'> & { readonly rename: ReadonlyMap<string, string> } {
  const all = (p: Person): readonly string[] => [p.value, ...p.also];
  const exact = new Set(people.map((p) => p.value));
  const indexes = [
    ['spelling', spellingKey, indexBy(people, spellingKey, all)],
    ['identifier', identifierKey, indexBy(people, identifierKey, all)],
    ['accents', accentKey, indexBy(people, accentKey, all)],
    ['order', orderKey, indexBy(people, orderKey, all)],
  ] as const;
  const decisions = new Map(Object.entries(decided).map(([text, value]) => [spellingKey(text), value]));
  const rename = new Map<string, string>();
  const same: { text: string; value: string; by: SameBy; rows: number }[] = [];
  const close: { text: string; values: string[]; rows: number }[] = [];
  const unknown: { text: string; rows: number }[] = [];
  let matched = 0;
  for (const [text, rows] of texts) {
    if (exact.has(text)) {
      matched++;
      continue;
    }
    const decision = decisions.get(spellingKey(text));
    const found = decision !== undefined ? ([decision, 'decision'] as const) : personFor(text);
    if (found) {
      matched++;
      const [value, by] = found;
      if (value !== text) {
        rename.set(text, value);
        same.push({ text, value, by, rows });
      }
      continue;
    }
    const values = closeTo(text, people);
    if (values.length > 0) close.push({ text, values, rows });
    else unknown.push({ text, rows });
  }
  return { same, close, unknown, matched, rename };

  function personFor(text: string): readonly [string, SameBy] | null {
    for (const [by, key, index] of indexes) {
      const person = index.get(key(text));
      if (person) return [person.value, by];
      // A key that two people share: the looser ones can only be shared by more.
      if (person === null) return null;
    }
    return null;
  }
}

/** People whose name is close: a letter or two differ, one name is shortened, or the key is shared. */
function closeTo(text: string, people: readonly Person[]): string[] {
  const key = orderKey(text);
  const words = accentKey(text).split(' ');
  const scored = people.flatMap((person) => {
    const score = Math.min(...[person.value, ...person.also].map((name) => closeness(key, words, name)));
    return score < Number.POSITIVE_INFINITY ? [{ value: person.value, score }] : [];
  });
  return scored
    .sort((a, b) => a.score - b.score)
    .slice(0, 3)
    .map((s) => s.value);
}

function closeness(key: string, words: readonly string[], name: string): number {
  const other = orderKey(name);
  if (/\d/.test(key) || /\d/.test(other)) return key === other ? 0 : Number.POSITIVE_INFINITY;
  const apart = distance(key, other);
  if (apart <= Math.max(1, Math.floor(Math.min(key.length, other.length) / 5))) return apart;
  return isShortened(words, accentKey(name).split(' ')) ? 2.5 : Number.POSITIVE_INFINITY;
}

/** "A Berg" or "Anna" for "Anna Berg": each word begins one of the other's, and at least one is whole. */
function isShortened(words: readonly string[], names: readonly string[]): boolean {
  if (words.length > names.length || words.join('').length < 3) return false;
  const free = [...names];
  let whole = 0;
  for (const word of words) {
    const at = free.findIndex((name) => name === word || (name.startsWith(word) && word.length <= 3));
    if (at < 0) return false;
    if (free[at] === word && word.length > 2) whole++;
    free.splice(at, 1);
  }
  return whole > 0;
}
