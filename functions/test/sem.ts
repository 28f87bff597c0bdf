import { defineFunction } from '../core/define.ts';
import { number } from '../core/parameter.ts';
import { published } from '../core/source.ts';

/** TEST.SEM(sd, icc): standard error of measurement, in the unit of sd. @throws nothing. */
export default defineFunction({
  name: 'TEST.SEM',
  family: 'reliability',
  summary: 'Standard error of measurement from a standard deviation and an intraclass correlation.',
  searchWords: ['measurement error', 'typical error', 'precision', 'reliability'],
  parameters: [
    number('sd', '', 'SD of the scores among the subjects', {
      bounds: { min: 0, because: 'An SD is not negative.' },
    }),
    number('icc', '', 'intraclass correlation of the test', {
      bounds: {
        min: 0,
        max: 1,
        because:
          'A negative one says that trials of one subject differ more than subjects do: give TEST.SEM.TRIALS or TEST.SEM.TABLE the trials.',
      },
    }),
  ],
  result: {
    is: 'number',
    unit: '',
    about: 'standard error of one measurement, in the unit of sd',
    measures: { same: [0] },
  },
  rule: 'sd · √(1 − icc)',
  sources: [published('Weir 2005, J Strength Cond Res 19:231–240')],
  notes: [
    'The result depends on the form of ICC. TEST.SEM.TRIALS needs none and comes from the trials themselves.',
  ],
  examples: [
    { formula: '=TEST.SEM(12, .9)', gives: 3.7947331922 },
    { formula: '=TEST.SEM(5, 1)', gives: 0 },
  ],
  seeAlso: ['TEST.SEM.TRIALS', 'TEST.MDC', 'TEST.ICC'],
  typical: [5, 0.9],
  directions: { sd: 1, icc: -1 },
  compute: (sd, icc) => sd * Math.sqrt(1 - icc),
});
