/**
 * Orders what fits some typed words: every word must occur somewhere; the earlier and the more at the beginning of a
 * word, the better. Without words everything stays as it is.
 */
export function rank<T>(items: readonly T[], typed: string, textOf: (item: T) => string): readonly T[] {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  if (words.length === 0) return items;
  return items
    .map((item) => ({ item, score: scoreOf(textOf(item).toLowerCase(), words) }))
    .filter(({ score }) => score !== null)
    .sort((a, b) => a.score! - b.score!)
    .map(({ item }) => item);
}

function scoreOf(text: string, words: readonly string[]): number | null {
  let score = 0;
  for (const word of words) {
    const at = text.indexOf(word);
    if (at < 0) return null;
    const begins = at === 0 || /[\s(.]/.test(text[at - 1]!);
    score += at + (begins ? 0 : 100);
  }
  return score;
}
