import { closest, distance } from 'fastest-levenshtein';

/** The candidate that takes the fewest single-letter changes, if it takes few enough to have been meant. */
export function nearest(word: string, candidates: readonly string[]): string | undefined {
  if (candidates.length === 0) return undefined;
  const best = closest(word, candidates);
  return distance(word, best) <= Math.max(1, Math.floor(word.length / 3)) ? best : undefined;
}
