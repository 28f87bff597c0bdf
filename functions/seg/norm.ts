import { defineFunction } from '../core/define.ts';
import { option, optionOr } from '../core/parameter.ts';
import { sex } from '../tables/parameters.ts';
import { surveyConstants, surveyMeasures, surveyNorm, surveySource } from '../tables/survey.ts';

/** SEG.NORM(measure, sex, [statistic]): the survey's mean or SD; lengths cm, ratios plain, Cormic per cent. @throws nothing. */
export default defineFunction({
  name: 'SEG.NORM',
  family: 'segments',
  summary: 'Mean or SD of a length or ratio in the 2012 survey, by sex.',
  searchWords: ['reference value', 'population', 'average', 'anthropometry', 'survey'],
  parameters: [
    option('measure', surveyMeasures, 'which length or ratio'),
    sex(),
    optionOr('mean', 'statistic', ['mean', 'sd'], 'mean, or standard deviation'),
  ],
  result: {
    is: 'number',
    unit: '',
    about: 'cm for lengths, per cent for the Cormic index, else a plain ratio',
  },
  rule: 'the survey’s value',
  sources: [surveySource],
  constants: surveyConstants,
  cautions: ['Army personnel of one country in 2012: adults, selected by fitness. No norm for other groups.'],
  notes: ['Lengths are between the landmarks of SEG.FEMUR, SEG.TIBIA and SEG.TRUNK.'],
  examples: [
    { formula: '=SEG.NORM("femur", "male")', gives: 40.927 },
    { formula: '=SEG.NORM("femur/tibia", "F", "sd")', gives: 0.0617 },
  ],
  seeAlso: ['SEG.PERCENTILE', 'SEG.CHECK', 'SEG.RATIO'],
  typical: ['femur', 'male', 'mean'],
  compute: (measure, sex, statistic) => surveyNorm(measure, sex, statistic).value,
});
