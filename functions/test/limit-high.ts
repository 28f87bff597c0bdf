import { defineFunction } from '../core/define.ts';
import { columnRange } from '../core/value.ts';
import { agreementSource, limit, limitSteps } from '../statistics/agreement.ts';
import { confidence, paired, pairNotes } from '../statistics/parameters.ts';

/** TEST.LIMIT.HIGH(a, b, [confidence=.95]): upper limit of agreement, in the unit of the values. @throws nothing; fewer than 2 pairs #N/A. */
export default defineFunction({
  name: 'TEST.LIMIT.HIGH',
  family: 'reliability',
  summary: 'Upper limit of agreement between two methods or trials.',
  searchWords: ['Bland-Altman', 'limits of agreement', 'LoA', 'method comparison'],
  parameters: [paired('a', 'first method or trial'), paired('b', 'second method or trial'), confidence],
  result: {
    is: 'number',
    unit: '',
    about: 'upper limit of the differences a − b, in their unit',
    measures: { same: [0, 1] },
  },
  rule: 'mean(a − b) + z · SD(a − b), z the normal quantile of the confidence (1.959964 for .95)',
  sources: [agreementSource],
  notes: [
    'The sign is a − b. The exact quantile is used, not 1.96 or 2.',
    'The limits assume differences of one size all over the scale: see the agreement chart first.',
    ...pairNotes,
  ],
  examples: [
    { formula: '=TEST.LIMIT.HIGH({10;20;30}, {11;20;29})', gives: 1.96, says: 'no bias, SD 1' },
    { formula: '=TEST.LIMIT.HIGH({10;20;30}, {11;20;29}, .9)', gives: 1.64485 },
  ],
  seeAlso: ['TEST.BIAS', 'TEST.LIMIT.LOW', 'TEST.SEM.TRIALS'],
  typical: [columnRange(40, 42, 45, 39), columnRange(41, 42, 43, 40), 0.95],
  directions: { confidence: 1 },
  compute: (a, b, confidence) => limit(a, b, confidence, 1),
  steps: (a, b, confidence) => limitSteps(a, b, confidence, 1),
});
