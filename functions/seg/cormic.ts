import { defineFunction } from '../core/define.ts';
import { definition } from '../core/source.ts';
import { sittingHeight, stature } from '../tables/parameters.ts';

/** SEG.CORMIC(sitting_height, stature): 100 sitting height/stature, per cent. @throws nothing. */
export default defineFunction({
  name: 'SEG.CORMIC',
  family: 'segments',
  summary: 'Cormic index: sitting height as a percentage of stature.',
  searchWords: ['sitting height ratio', 'long legs', 'long trunk', 'proportion'],
  parameters: [sittingHeight(), stature()],
  result: { is: 'number', unit: '%', about: '100 × sitting height / stature' },
  rule: '100 × sitting_height / stature',
  sources: [definition('the Cormic index of anthropometry')],
  notes: ['SEG.NORM("cormic", sex) gives the survey’s mean, SEG.PERCENTILE the percentile of one person.'],
  examples: [
    { formula: '=SEG.CORMIC(92, 176)', gives: 52.2727 },
    { formula: '=SEG.CORMIC(92.8, 177.6)', gives: 52.2523, says: 'the first man of the 2012 survey' },
  ],
  seeAlso: ['SEG.NORM', 'SEG.PERCENTILE', 'SEG.CRURAL'],
  typical: [92, 176],
  directions: { sitting_height: 1, stature: -1 },
  compute: (sittingHeight, stature) => (100 * sittingHeight) / stature,
});
