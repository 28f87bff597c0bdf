import { defineFunction } from '../core/define.ts';
import { number } from '../core/parameter.ts';
import { definition } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { columnOf } from '../statistics/columns.ts';
import { noSpread, tooFew } from '../statistics/few.ts';
import { column } from '../statistics/parameters.ts';

/** COHORT.Z(value, range): standard score, a plain number. @throws nothing; fewer than 2 values #N/A, no spread #DIV/0!. */
export default defineFunction({
  name: 'COHORT.Z',
  family: 'groups',
  summary: 'Standard score: how many SDs a value lies above the mean of a group.',
  searchWords: ['z-score', 'standard score', 'normalise', 'compare with the group'],
  parameters: [number('value', '', 'the value to place'), column('range', 'the group')],
  result: { is: 'number', unit: '', about: 'SDs above (+) or below (−) the mean', measures: 'plain' },
  rule: '(value − mean) / SD (sample)',
  sources: [definition('standard score with the sample SD')],
  notes: ['The SD has the divisor n − 1. Blanks in the group are left out.'],
  examples: [
    { formula: '=COHORT.Z(4, {1;2;3})', gives: 2 },
    { formula: '=COHORT.Z(10, {10;12;14})', gives: -1 },
  ],
  seeAlso: ['COHORT.T', 'COHORT.PERCENTILE', 'COHORT.MAD'],
  typical: [41, columnRange(38, 41, 45, 36)],
  directions: { value: 1 },
  compute: (value, range) => {
    const { n, mean, sd } = columnOf(range);
    if (n < 2) return tooFew('range', n, 2);
    return sd === 0 ? noSpread('range') : (value - mean) / sd;
  },
});
