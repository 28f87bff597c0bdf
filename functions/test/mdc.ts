import { defineFunction } from '../core/define.ts';
import { number } from '../core/parameter.ts';
import { published } from '../core/source.ts';
import { zOf } from '../statistics/distributions.ts';
import { confidence } from '../statistics/parameters.ts';

/** TEST.MDC(sem, [confidence=.95]): minimal detectable change, in the unit of sem. @throws nothing. */
export default defineFunction({
  name: 'TEST.MDC',
  family: 'reliability',
  summary: 'Minimal detectable change: how far two measurements must differ to be more than error.',
  searchWords: [
    'MDC95',
    'smallest detectable change',
    'minimal difference',
    'real change',
    'smallest real difference',
  ],
  parameters: [
    number('sem', '', 'standard error of measurement', {
      bounds: { min: 0, because: 'A standard error is not negative.' },
    }),
    confidence,
  ],
  result: {
    is: 'number',
    unit: '',
    about: 'minimal detectable change, in the unit of sem',
    measures: { same: [0] },
  },
  rule: 'z · √2 · sem, z the normal quantile of the confidence (1.959964 for .95)',
  sources: [published('Weir 2005, J Strength Cond Res 19:231–240')],
  notes: ['The exact quantile is used, not 1.96: the difference is 2 in 100 000.'],
  examples: [
    { formula: '=TEST.MDC(0.4)', gives: 1.11, says: 'knee-to-wall distance, cm (Konor 2012 prints 1.1)' },
    { formula: '=TEST.MDC(1.3)', gives: 3.6, says: 'ankle angle, deg (Konor 2012 prints 3.7)' },
    { formula: '=TEST.MDC(1, .9)', gives: 2.3262 },
  ],
  seeAlso: ['TEST.CHANGE', 'TEST.SEM', 'TEST.SEM.TRIALS', 'TEST.SWC'],
  typical: [1.3, 0.95],
  directions: { sem: 1, confidence: 1 },
  compute: (sem, confidence) => zOf(confidence) * Math.SQRT2 * sem,
  steps: (sem, confidence) => [
    { name: `normal quantile of ${confidence}`, symbol: 'z', value: zOf(confidence), unit: '' },
    { name: 'standard error of a difference', rule: '√2 · sem', value: Math.SQRT2 * sem, unit: '' },
    {
      name: 'minimal detectable change',
      rule: 'z · √2 · sem',
      value: zOf(confidence) * Math.SQRT2 * sem,
      unit: '',
    },
  ],
});
