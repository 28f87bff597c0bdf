import { defineFunction } from '../core/define.ts';
import { number, option } from '../core/parameter.ts';
import { definition } from '../core/source.ts';
import { step } from '../posture/steps.ts';
import { normalBelow } from '../statistics/distributions.ts';
import { sex } from '../tables/parameters.ts';
import { surveyConstants, surveyMeasures, surveyNorm, surveySource } from '../tables/survey.ts';

/** SEG.PERCENTILE(measure, sex, value): 0–100, by a normal distribution. @throws nothing. */
export default defineFunction({
  name: 'SEG.PERCENTILE',
  family: 'segments',
  summary: 'Percentile of a length or ratio among the 2012 survey’s men or women, 0 to 100.',
  searchWords: ['percentile', 'long femur', 'compare', 'population'],
  parameters: [
    option('measure', surveyMeasures, 'which length or ratio'),
    sex(),
    number('value', '', 'the measured value: cm for lengths, per cent for the Cormic index'),
  ],
  result: { is: 'number', unit: '', about: 'percentile, 0 to 100' },
  rule: '100 × Φ((value − mean) / SD)',
  sources: [surveySource, definition('normal distribution with the survey’s mean and SD')],
  constants: surveyConstants,
  cautions: ['Army personnel of one country in 2012: adults, selected by fitness. No norm for other groups.'],
  notes: ['A normal distribution is assumed: far out in the tails the percentile is only a guide.'],
  examples: [
    { formula: '=SEG.PERCENTILE("femur", "male", 43.769)', gives: 84.1345, says: 'one SD above the mean' },
    { formula: '=SEG.PERCENTILE("trunk/femur", "F", 1.2)', gives: 18.913 },
  ],
  seeAlso: ['SEG.NORM', 'COHORT.PERCENTILE', 'SEG.RATIO'],
  typical: ['femur', 'male', 43],
  directions: { value: 1 },
  compute: (measure, sex, value) =>
    100 *
    normalBelow((value - surveyNorm(measure, sex, 'mean').value) / surveyNorm(measure, sex, 'sd').value),
  steps: (measure, sex, value) => {
    const mean = surveyNorm(measure, sex, 'mean');
    const sd = surveyNorm(measure, sex, 'sd');
    const z = (value - mean.value) / sd.value;
    return [
      step('SDs from the mean', 'z', '(value − mean) / SD', z, '', [mean, sd]),
      step('Percentile', 'P', '100 × Φ(z)', 100 * normalBelow(z), ''),
    ];
  },
});
