import type { FunctionHelp } from '../../../functions/core/describe.ts';

/** Words of a question that say nothing about what is asked. */
const EMPTY = new Set(
  'a an and any are as at be can do does for from get how i if in is it me much many my need of on or own show tell the this to want we what when where which who why will with you your'.split(
    ' ',
  ),
);

const wordsOf = (text: string): readonly string[] => text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];

/** Telling words at the beginning of a summary that say what the function is about; the others are about how. */
const HEADLINE = 4;
const telling = (text: string): readonly string[] => wordsOf(text).filter((word) => !EMPTY.has(word));

/** What a word of the question is worth in each part of a function's help: what it is for, over what it mentions. */
const places: readonly { readonly worth: number; readonly of: (help: FunctionHelp) => readonly string[] }[] =
  [
    { worth: 5, of: ({ searchWords }) => wordsOf(searchWords.join(' ')) },
    { worth: 5, of: ({ name, aliases = [] }) => wordsOf([name, ...aliases].join(' ')) },
    { worth: 4, of: ({ summary }) => telling(summary).slice(0, HEADLINE) },
    { worth: 2, of: ({ summary }) => wordsOf(summary) },
    { worth: 2, of: ({ family, result }) => wordsOf(`${family} ${result.about}`) },
    {
      worth: 0.5,
      of: ({ parameters }) => wordsOf(parameters.map(({ name, about }) => `${name} ${about}`).join(' ')),
    },
  ];
/** Further phrases of a function's own search words that have the word: it is asked for in more than one way. */
const AGAIN = 1.5;

/** A whole phrase of a function's own search words is what was wanted, the first of them above all. */
const PHRASE = 20;
const FIRST = 8;

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
  const said = telling(question);
  const words = said.length ? said : typed;
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
  const texts = places.map(({ worth, of }) => ({ worth, known: of(help) }));
  const isPhrase = (text: string): boolean => wordsOf(text).join(' ') === phrase;
  let met = [help.name, ...(help.aliases ?? [])].some(isPhrase) ? 1 : 0;
  const exact = help.searchWords.findIndex(isPhrase);
  let score = exact < 0 ? 0 : exact === 0 ? PHRASE + FIRST : PHRASE;
  for (const word of words) {
    const knowing = texts.filter(({ known }) => known.some((one) => alike(word, one)));
    if (knowing.length > 0) met++;
    for (const { worth } of knowing) score += worth;
    const phrases = help.searchWords.filter((one) => wordsOf(one).some((known) => alike(word, known)));
    score += AGAIN * Math.min(2, Math.max(0, phrases.length - 1));
  }
  return { met, score };
}
