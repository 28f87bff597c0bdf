import { defineFunction } from '../core/define.ts';
import { numberOr } from '../core/parameter.ts';
import { secondary } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { columnOf } from '../statistics/columns.ts';
import { tooFew } from '../statistics/few.ts';
import { column } from '../statistics/parameters.ts';

/** TEST.SWC(range, [factor=.2]): smallest worthwhile change, in the unit of the values. @throws nothing; fewer than 2 values #N/A. */
export default defineFunction({
  name: 'TEST.SWC',
  family: 'reliability',
  summary: 'Smallest worthwhile change: a share of the spread among subjects.',
  searchWords: ['smallest worthwhile change', 'meaningful change', 'effect size'],
  parameters: [
    column('range', 'one score of each subject'),
    numberOr(0.2, 'factor', '', 'share of the SD', {
      bounds: { min: 0, because: 'A change has a size.' },
    }),
  ],
  result: {
    is: 'number',
    unit: '',
    about: 'factor × SD, in the unit of the values',
    measures: { same: [0] },
  },
  rule: 'factor · SD (sample)',
  sources: [secondary('Hopkins 2000, Sports Med 30:1–15; .2 after Cohen’s small effect')],
  cautions: ['A convention about groups. What is worthwhile for one person is not a share of an SD.'],
  notes: [
    'Compare it with TEST.MDC: a test whose error exceeds the smallest worthwhile change cannot see it.',
  ],
  examples: [
    { formula: '=TEST.SWC({1;2;3;4;5})', gives: 0.3162, says: '.2 · 1.5811' },
    { formula: '=TEST.SWC({10;16}, .5)', gives: 2.1213 },
  ],
  seeAlso: ['TEST.MDC', 'TEST.CHANGE'],
  typical: [columnRange(38, 41, 45, 36), 0.2],
  directions: { factor: 1 },
  compute: (range, factor) => {
    const { n, sd } = columnOf(range);
    return n < 2 ? tooFew('range', n, 2) : factor * sd;
  },
});
