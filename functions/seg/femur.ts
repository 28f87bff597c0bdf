import { defineFunction } from '../core/define.ts';
import { definition } from '../core/source.ts';
import { lengthBetween } from '../posture/length.ts';
import { femur, standingHeight } from '../tables/parameters.ts';
import { landmarkNote } from '../tables/sources.ts';
import { jointLineBelow } from '../tables/survey.ts';

const femurParameter = femur();

/** SEG.FEMUR(trochanter_height, knee_height): cm. @throws nothing; a length outside 15–80 gives #NUM!. */
export default defineFunction({
  name: 'SEG.FEMUR',
  family: 'segments',
  summary: 'Femur length as the difference of two standing heights.',
  searchWords: ['thigh length', 'upper leg', 'measure', 'femur length', 'femur'],
  parameters: [
    standingHeight('trochanter_height', 'top of the greater trochanter above the floor'),
    standingHeight('knee_height', 'lateral femoral epicondyle above the floor'),
  ],
  result: { is: 'number', unit: 'cm', about: 'greater trochanter to lateral femoral epicondyle' },
  rule: 'trochanter_height − knee_height',
  sources: [definition('difference of two heights taken standing')],
  constants: [jointLineBelow.male, jointLineBelow.female],
  notes: ['Both heights from the floor, standing upright, both from one side of the body.', landmarkNote],
  examples: [
    { formula: '=SEG.FEMUR(91.5, 49.5)', gives: 42 },
    { formula: '=SEG.FEMUR(91.9, 50)', gives: 41.9, says: 'the first man of the 2012 survey' },
  ],
  seeAlso: ['SEG.TIBIA', 'SEG.TRUNK', 'SEG.ESTIMATE', 'SEG.CHECK'],
  typical: [91.5, 49.5],
  directions: { trochanter_height: 1, knee_height: -1 },
  compute: (trochanter_height, knee_height) =>
    lengthBetween(femurParameter, 'trochanter_height', trochanter_height, 'knee_height', knee_height),
});
