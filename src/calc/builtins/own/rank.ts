import { isIssue } from '../../../../functions/core/issue.ts';
import { isRange, type Outcome } from '../../../../functions/core/value.ts';
import { sortedNumbersOf } from '../../ranges/sorted-ranges.ts';
import type { Own } from '../builtin.ts';
import { notFound, numberOf, problem } from './reading.ts';

/** How many sorted values lie below x. */
export function countBelow(sorted: Float64Array, x: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! < x) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** How many sorted values are at most x. */
export function countUpTo(sorted: Float64Array, x: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! <= x) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** OpenFormula (ISO/IEC 26300-2), statistical functions, RANK: order 0 counts from the largest, any other from the least. */
const rank = (mean: boolean): Own => ({
  minArgs: 2,
  maxArgs: 3,
  compute([given, range, way], name): Outcome {
    const value = numberOf(name, given);
    if (isIssue(value)) return value;
    if (isIssue(range)) return range;
    if (!isRange(range)) return problem(name, '#VALUE!', 'Cell range expected.');
    const order = numberOf(name, way, 0);
    if (isIssue(order)) return order;
    const sorted = sortedNumbersOf(range);
    if (isIssue(sorted)) return sorted;
    const below = countBelow(sorted, value);
    const upTo = countUpTo(sorted, value);
    if (below === upTo) return notFound(name);
    const first = order === 0 ? sorted.length - upTo + 1 : below + 1;
    return mean ? first + (upTo - below - 1) / 2 : first;
  },
});

export const rankOfBest = rank(false);
export const rankOfMean = rank(true);
