import { defineFunction } from '../core/define.ts';
import { constant, definition } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { columnOf } from '../statistics/columns.ts';
import { medianDeviation } from '../statistics/describe.ts';
import { tooFew } from '../statistics/few.ts';
import { column } from '../statistics/parameters.ts';

const normal = definition('1 / normal quantile(3/4), rounded to four decimals as is usual');
const toSd = constant('factor to the SD of a normal distribution', 1.4826, '', normal);

/** COHORT.MAD(range): scaled median absolute deviation, in the unit of the values. @throws nothing; no value #N/A. */
export default defineFunction({
  name: 'COHORT.MAD',
  family: 'groups',
  summary: 'Robust spread: median absolute deviation from the median, scaled to an SD.',
  searchWords: ['median absolute deviation', 'robust SD', 'outliers'],
  parameters: [column('range', 'the group')],
  result: { is: 'number', unit: '', about: 'spread, in the unit of the values', measures: { same: [0] } },
  rule: '1.4826 · median(|value − median|)',
  sources: [normal],
  constants: [toSd],
  notes: [
    'Outliers hardly affect it. For values from a normal distribution it estimates the SD. Blanks are left out.',
  ],
  examples: [
    { formula: '=COHORT.MAD({1;2;3;4;100})', gives: 1.4826 },
    { formula: '=COHORT.MAD({5;5;5})', gives: 0 },
  ],
  seeAlso: ['COHORT.TRIMMED', 'COHORT.Z'],
  typical: [columnRange(38, 41, 45, 36, 60)],
  compute: (range) => {
    const { n, sorted } = columnOf(range);
    return n === 0 ? tooFew('range', 0, 1) : toSd.value * medianDeviation(sorted);
  },
});
