import { defineFunction } from '../core/define.ts';
import { number } from '../core/parameter.ts';
import { definition } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { columnOf } from '../statistics/columns.ts';
import { noSpread, tooFew } from '../statistics/few.ts';
import { column } from '../statistics/parameters.ts';

/** COHORT.T(value, range): T score, a plain number. @throws nothing; fewer than 2 values #N/A, no spread #DIV/0!. */
export default defineFunction({
  name: 'COHORT.T',
  family: 'groups',
  summary: 'T score: standard score on a scale with mean 50 and SD 10.',
  searchWords: ['T-score', 'standard score', 'profile'],
  parameters: [number('value', '', 'the value to place'), column('range', 'the group')],
  result: { is: 'number', unit: '', about: 'T score', measures: 'plain' },
  rule: '50 + 10 (value − mean) / SD (sample)',
  sources: [definition('standard score, scaled')],
  notes: ['Not Student’s t: for a comparison of two groups see COHORT.WELCH.'],
  examples: [
    { formula: '=COHORT.T(4, {1;2;3})', gives: 70 },
    { formula: '=COHORT.T(12, {10;12;14})', gives: 50 },
  ],
  seeAlso: ['COHORT.Z', 'COHORT.PERCENTILE'],
  typical: [41, columnRange(38, 41, 45, 36)],
  directions: { value: 1 },
  compute: (value, range) => {
    const { n, mean, sd } = columnOf(range);
    if (n < 2) return tooFew('range', n, 2);
    return sd === 0 ? noSpread('range') : 50 + (10 * (value - mean)) / sd;
  },
});
