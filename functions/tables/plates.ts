import { numbersIn } from '../core/invoke.ts';
import { type Issue, issue } from '../core/issue.ts';
import type { Range } from '../core/value.ts';
import { once } from '../statistics/memo.ts';

const MOST_PAIRS = 20;
/** Half of the heaviest load that is accepted, kg. */
const REACH = 350;
/** More different sums than this would take too long to list; ordinary plates make fewer than two thousand. */
const MOST_SUMS = 200_000;

/**
 * What one side of a bar can carry, ascending from 0, kg: sums of up to 20 plates of the given sizes, as far as a load
 * can ask for and one plate more. Sums within a milligram are one. Found level by level, so each sum is met first with
 * the fewest plates.
 */
export const pairSums: (plates: Range) => Float64Array | Issue = once((range) => {
  const sizes = [...new Set(numbersIn(range).values)].sort((a, b) => b - a);
  const furthest = REACH + (sizes[0] ?? 0);
  const known = new Map<number, number>([[0, 0]]);
  let level = [0];
  for (let pairs = 1; pairs <= MOST_PAIRS && level.length > 0; pairs++) {
    const next: number[] = [];
    for (const sum of level)
      for (const size of sizes) {
        const more = sum + size;
        const key = Math.round(more * 1e6);
        if (more > furthest || known.has(key)) continue;
        if (known.size >= MOST_SUMS) return issue('#NUM!', 'too-many-sums', { received: sizes.length });
        known.set(key, more);
        next.push(more);
      }
    level = next;
  }
  return Float64Array.from(known.values()).sort();
});
