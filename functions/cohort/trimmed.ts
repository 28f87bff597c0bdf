import { defineFunction } from '../core/define.ts';
import { numberOr } from '../core/parameter.ts';
import { definition } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { columnOf } from '../statistics/columns.ts';
import { trimmedMean } from '../statistics/describe.ts';
import { tooFew } from '../statistics/few.ts';
import { column } from '../statistics/parameters.ts';

/** COHORT.TRIMMED(range, [share=.1]): mean without the extremes, in the unit of the values. @throws nothing; no value #N/A. */
export default defineFunction({
  name: 'COHORT.TRIMMED',
  family: 'groups',
  summary: 'Trimmed mean: mean without a share of the smallest and of the largest values.',
  searchWords: ['robust mean', 'outliers', 'truncated mean'],
  parameters: [
    column('range', 'the group'),
    numberOr(0.1, 'share', '', 'share taken off each end', {
      bounds: { min: 0, below: 0.5, because: 'Half off each end would leave nothing.' },
    }),
  ],
  result: {
    is: 'number',
    unit: '',
    about: 'mean of the rest, in the unit of the values',
    measures: { same: [0] },
  },
  rule: 'mean without the floor(share · n) smallest and as many largest values',
  sources: [definition('trimmed mean')],
  notes: ['The share is taken off each end: .1 leaves 80 % of the values. Blanks are left out.'],
  examples: [
    { formula: '=COHORT.TRIMMED({1;2;3;4;100}, .2)', gives: 3 },
    { formula: '=COHORT.TRIMMED({1;2;3;4;100})', gives: 22, says: 'a tenth of five is no whole value' },
  ],
  seeAlso: ['COHORT.MAD', 'COHORT.Z'],
  typical: [columnRange(38, 41, 45, 36, 60), 0.1],
  compute: (range, share) => {
    const { n, sorted } = columnOf(range);
    // A share such as .1 of 30 comes to 2.9999999999999996 or 3: the same number of values either way.
    return n === 0 ? tooFew('range', 0, 1) : trimmedMean(sorted, Math.floor(share * n + 1e-9));
  },
});
