import type { Unreadable } from '../api.ts';
import type { Placed } from './placed.ts';

/** Groups that are told, at most. */
const MOST = 500;

/** Unreadable cells grouped by column, text and reason, the most frequent first. */
export function unreadableOf(
  placed: readonly Placed[],
  lineOf: (row: number) => number,
): readonly Unreadable[] {
  const groups = placed.flatMap(({ match, builder }) => {
    const found = new Map<string, Unreadable>();
    for (const [row, { held, reason }] of builder.held) {
      const text = held.trim();
      const key = `${text}\u0000${reason}`;
      const known = found.get(key);
      if (known) found.set(key, { ...known, count: known.count + 1 });
      else found.set(key, { index: match.source.index, text, reason, count: 1, line: lineOf(row) });
    }
    return [...found.values()];
  });
  return groups.sort((a, b) => b.count - a.count || a.line - b.line).slice(0, MOST);
}
