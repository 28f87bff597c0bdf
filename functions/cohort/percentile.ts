import { defineFunction } from '../core/define.ts';
import { number } from '../core/parameter.ts';
import { definition } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { columnOf } from '../statistics/columns.ts';
import { tooFew } from '../statistics/few.ts';
import { column } from '../statistics/parameters.ts';
import { tied } from '../statistics/ties.ts';

/** COHORT.PERCENTILE(value, range): percentile rank, 0–100. @throws nothing; no value #N/A. */
export default defineFunction({
  name: 'COHORT.PERCENTILE',
  family: 'groups',
  summary: 'Percentile rank: share of a group below a value, in per cent, ties counted half.',
  searchWords: ['percentile rank', 'rank in the group', 'centile'],
  parameters: [number('value', '', 'the value to place'), column('range', 'the group')],
  result: { is: 'number', unit: '%', about: 'percentile rank, 0 to 100', measures: 'plain' },
  rule: '100 (number below + ½ · number equal) / n',
  sources: [definition('mid-rank percentile')],
  notes: [
    'The value need not be in the group. Blanks in the group are left out. Values within a relative 1e-12 count as equal.',
  ],
  examples: [
    { formula: '=COHORT.PERCENTILE(3, {1;2;3;4})', gives: 62.5, says: 'two below, one equal, of four' },
    { formula: '=COHORT.PERCENTILE(9, {1;2;3;4})', gives: 100 },
  ],
  seeAlso: ['COHORT.Z', 'COHORT.T'],
  typical: [41, columnRange(38, 41, 45, 36)],
  compute: (value, range) => {
    const { n, sorted } = columnOf(range);
    if (n === 0) return tooFew('range', 0, 1);
    const below = countBelow(sorted, value, false);
    const upTo = countBelow(sorted, value, true);
    return (100 * (below + (upTo - below) / 2)) / n;
  },
});

/** How many ascending values are below a value, or not above it; values tied with it count as equal. */
function countBelow(sorted: Float64Array, value: number, orEqual: boolean): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const equal = tied(sorted[middle]!, value);
    if (equal ? orEqual : sorted[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
