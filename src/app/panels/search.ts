import type { FunctionHelp } from '../../../functions/core/describe.ts';

/** Words of a question that say nothing about what is asked. */
const EMPTY = new Set(
  'a an and any are as at be can do does for from get how i if in is it me much many my need of on or own show tell the this to want we what when where which who why will with you your'.split(
    ' ',
  ),
);

const wordsOf = (text: string): readonly string[] => text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];

/** What a word of the question is worth in each part of a function's help. */
const places: readonly { readonly worth: number; readonly of: (help: FunctionHelp) => string }[] = [
  { worth: 5, of: ({ searchWords }) => searchWords.join(' ') },
  { worth: 5, of: ({ name }) => name },
  { worth: 3, of: ({ summary }) => summary },
  { worth: 2, of: ({ family, result }) => `${family} ${result.about}` },
  { worth: 1, of: ({ parameters }) => parameters.map(({ name, about }) => `${name} ${about}`).join(' ') },
];

/** A whole phrase of a function's own search words is what was wanted. */
const PHRASE = 20;

/** Same word, or one begins with the other: lifts and lift, correlation and correlate. */
const alike = (a: string, b: string): boolean =>
  a === b || (a.length >= 3 && b.startsWith(a)) || (b.length >= 4 && a.startsWith(b)) || stem(a) === stem(b);
const stem = (word: string): string => (word.length > 6 ? word.slice(0, 6) : word);

/**
 * The functions that answer a question in plain words, the best first. A function that knows more of the words comes
 * before one that knows fewer; without words all stay in their order.
 */
export function answering(all: readonly FunctionHelp[], question: string): readonly FunctionHelp[] {
  const typed = wordsOf(question);
  if (typed.length === 0) return all;
  const telling = typed.filter((word) => !EMPTY.has(word));
  const words = telling.length ? telling : typed;
  const phrase = typed.join(' ');
  return all
    .map((help) => ({ help, ...matchOf(help, words, phrase) }))
    .filter(({ met }) => met > 0)
    .sort((a, b) => b.met - a.met || b.score - a.score)
    .filter(({ met }, _, sorted) => met >= sorted[0]!.met - 1)
    .map(({ help }) => help);
}

function matchOf(
  help: FunctionHelp,
  words: readonly string[],
  phrase: string,
): { met: number; score: number } {
  const texts = places.map(({ worth, of }) => ({ worth, known: wordsOf(of(help)) }));
  const isPhrase = (text: string): boolean => wordsOf(text).join(' ') === phrase;
  let met = isPhrase(help.name) ? 1 : 0;
  let score = help.searchWords.some(isPhrase) ? PHRASE : 0;
  for (const word of words) {
    const knowing = texts.filter(({ known }) => known.some((one) => alike(word, one)));
    if (knowing.length > 0) met++;
    for (const { worth } of knowing) score += worth;
  }
  return { met, score };
}
