import { isIssue } from '../../../../functions/core/issue.ts';
import { isRange, type Outcome } from '../../../../functions/core/value.ts';
import { sortedNumbersOf } from '../../ranges/sorted-ranges.ts';
import type { Own } from '../builtin.ts';
import { countBelow, countUpTo } from './rank.ts';
import { noData, notFound, numberOf, problem } from './reading.ts';

/**
 * OpenFormula, statistical functions, PERCENTRANK: share of the other values that lie below; a value between two others
 * is interpolated. Cut off (not rounded) after `significance` digits. The exclusive form counts (below + 1)/(n + 1).
 */
const percentRank = (exclusive: boolean): Own => ({
  minArgs: 2,
  maxArgs: 3,
  compute([range, given, significance], name): Outcome {
    if (isIssue(range)) return range;
    if (!isRange(range)) return problem(name, '#VALUE!', 'Cell range expected.');
    const value = numberOf(name, given);
    if (isIssue(value)) return value;
    const digits = numberOf(name, significance, 3);
    if (isIssue(digits)) return digits;
    if (digits < 1) return problem(name, '#NUM!', 'Value too small.');
    const sorted = sortedNumbersOf(range);
    if (isIssue(sorted)) return sorted;
    const n = sorted.length;
    if (n === 0) return noData(name);
    const place = placeOf(sorted, value);
    if (place === undefined) return notFound(name);
    const share = exclusive ? (place + 1) / (n + 1) : n === 1 ? 1 : place / (n - 1);
    const scale = Number(`1e${Math.trunc(digits)}`);
    // a share that is 0.3 but for the last bit of a double must not be cut to 0.299
    return Math.floor(share * scale + 1e-9) / scale;
  },
});

/** How many values lie below, with a share for a value between two; undefined outside of them all. */
function placeOf(sorted: Float64Array, value: number): number | undefined {
  const n = sorted.length;
  const below = countBelow(sorted, value);
  if (countUpTo(sorted, value) > below) return below;
  if (below === 0 || below === n) return undefined;
  const low = sorted[below - 1]!;
  const first = countBelow(sorted, low);
  return first + ((value - low) / (sorted[below]! - low)) * (below - first);
}

export const percentRankInclusive = percentRank(false);
export const percentRankExclusive = percentRank(true);
