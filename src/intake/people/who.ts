import { distance } from 'fastest-levenshtein';
import { accentKey, givenNames, spellingKey } from '../cells/index.ts';

/** Somebody of the roster: what cells say when they mean this person, and other texts that mean the same. */
export interface Person {
  readonly value: string;
  readonly also: readonly string[];
  readonly identity?: Identity;
}

/** What tells a person besides the name; nothing where it is not known, or not the same in all rows. */
export interface Identity {
  readonly id?: string;
  /** ISO 8601. */
  readonly born?: string;
}

export type SameBy = 'decision' | 'spelling' | 'accents' | 'order' | 'identifier' | 'birth date';

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
 * Who is meant by a text that nobody is called by, as identifier and birth date of its rows say. A birth date alone
 * proves nothing (twins): it counts where a given name is the same, and proposes somebody where none is.
 */
function byIdentity(
  text: string,
  { id, born }: Identity,
  people: readonly Person[],
): { readonly is: readonly [string, SameBy] } | { readonly maybe: readonly string[] } | null {
  const withId = id === undefined ? [] : people.filter(({ identity }) => identity?.id === id);
  if (withId.length === 1) return { is: [withId[0]!.value, 'identifier'] };
  const sameDay = born === undefined ? [] : people.filter(({ identity }) => identity?.born === born);
  const words = accentKey(text).split(' ');
  const called = sameDay.filter(({ value }) => givenNames(value).some((name) => words.includes(name)));
  if (called.length === 1) return { is: [called[0]!.value, 'birth date'] };
  return sameDay.length === 0 ? null : { maybe: sameDay.map(({ value }) => value).slice(0, 3) };
}

/**
 * Says who is meant by each text. Case, blanks, accents and the order of names may differ; a close spelling is only
 * proposed. A changed name is recognised by what else is known of its rows. `decided` are earlier answers: a text and the
 * person it means.
 */
export function whoIsWho(
  texts: ReadonlyMap<string, number>,
  people: readonly Person[],
  decided: Readonly<Record<string, string>> = {},
  identities: ReadonlyMap<string, Identity> = new Map(),
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
    const known = byIdentity(text, identities.get(text) ?? {}, people);
    // Somebody whom the file names otherwise as well is no other name of that person.
    if (known && 'is' in known && (known.is[1] === 'identifier' || !texts.has(known.is[0]))) {
      const [value, by] = known.is;
      matched++;
      rename.set(text, value);
      same.push({ text, value, by, rows });
      continue;
    }
    const maybe = known === null ? [] : 'is' in known ? [known.is[0]] : known.maybe;
    const values = [...new Set([...maybe, ...closeTo(text, people)])].slice(0, 3);
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
