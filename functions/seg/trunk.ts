import { defineFunction } from '../core/define.ts';
import { definition } from '../core/source.ts';
import { lengthBetween } from '../posture/length.ts';
import { standingHeight, trunk } from '../tables/parameters.ts';

const trunkParameter = trunk();

/** SEG.TRUNK(shoulder_height, trochanter_height): cm. @throws nothing; a length outside 20–100 gives #NUM!. */
export default defineFunction({
  name: 'SEG.TRUNK',
  family: 'segments',
  summary: 'Trunk length as the difference of two standing heights.',
  searchWords: ['torso length', 'back length', 'measure'],
  parameters: [
    standingHeight('shoulder_height', 'acromion above the floor'),
    standingHeight('trochanter_height', 'top of the greater trochanter above the floor'),
  ],
  result: { is: 'number', unit: 'cm', about: 'greater trochanter to acromion' },
  rule: 'shoulder_height − trochanter_height',
  sources: [definition('difference of two heights taken standing')],
  notes: ['Both heights from the floor, standing upright, both from one side of the body.'],
  examples: [
    { formula: '=SEG.TRUNK(142.5, 91.5)', gives: 51 },
    { formula: '=SEG.TRUNK(146, 91.9)', gives: 54.1 },
  ],
  seeAlso: ['SEG.FEMUR', 'SEG.TIBIA', 'SEG.ESTIMATE', 'SEG.CHECK'],
  typical: [142.5, 91.5],
  directions: { shoulder_height: 1, trochanter_height: -1 },
  compute: (shoulder_height, trochanter_height) =>
    lengthBetween(trunkParameter, 'shoulder_height', shoulder_height, 'trochanter_height', trochanter_height),
});
