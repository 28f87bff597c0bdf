import { defineFunction } from '../core/define.ts';
import { definition } from '../core/source.ts';
import { lengthBetween } from '../posture/length.ts';
import { standingHeight, tibia } from '../tables/parameters.ts';
import { landmarkNote } from '../tables/sources.ts';
import { jointLineBelow } from '../tables/survey.ts';

const tibiaParameter = tibia();

/** SEG.TIBIA(knee_height, ankle_height): cm. @throws nothing; a length outside 15–80 gives #NUM!. */
export default defineFunction({
  name: 'SEG.TIBIA',
  family: 'segments',
  summary: 'Tibia length as the difference of two standing heights.',
  searchWords: ['shank length', 'shin', 'lower leg', 'measure'],
  parameters: [
    standingHeight('knee_height', 'lateral femoral epicondyle above the floor'),
    standingHeight('ankle_height', 'lateral malleolus above the floor'),
  ],
  result: { is: 'number', unit: 'cm', about: 'lateral femoral epicondyle to lateral malleolus' },
  rule: 'knee_height − ankle_height',
  sources: [definition('difference of two heights taken standing')],
  constants: [jointLineBelow.male, jointLineBelow.female],
  notes: ['Both heights from the floor, standing upright, both from one side of the body.', landmarkNote],
  examples: [
    { formula: '=SEG.TIBIA(49.5, 8.5)', gives: 41 },
    { formula: '=SEG.TIBIA(50, 7.7)', gives: 42.3, says: 'the first man of the 2012 survey' },
  ],
  seeAlso: ['SEG.FEMUR', 'SEG.TRUNK', 'SEG.ESTIMATE', 'SEG.CHECK'],
  typical: [49.5, 8.5],
  directions: { knee_height: 1, ankle_height: -1 },
  compute: (knee_height, ankle_height) =>
    lengthBetween(tibiaParameter, 'knee_height', knee_height, 'ankle_height', ankle_height),
});
