import { defineFunction } from '../core/define.ts';
import { defaultFoot, footOfLengths } from '../tables/foot.ts';
import { femur, tibia, trunk } from '../tables/parameters.ts';

/** SEG.FOOT(femur, tibia, trunk): the foot that the posture functions take when none is given, cm. @throws nothing. */
export default defineFunction({
  name: 'SEG.FOOT',
  family: 'segments',
  summary:
    'Foot length that goes with a femur, tibia and trunk: what the lean functions take when no foot is given.',
  searchWords: ['default foot', 'foot length', 'shoe'],
  parameters: [femur(), tibia(), trunk()],
  result: { is: 'number', unit: 'cm', about: 'heel to longest toe' },
  rule: '.152/.779 × (femur + tibia + trunk)',
  sources: [footOfLengths.source],
  constants: [footOfLengths],
  notes: ['A measured foot is better: it sets where mid-foot lies, and how far a heel lift turns the foot.'],
  examples: [
    { formula: '=SEG.FOOT(42, 41, 51)', gives: 26.1463 },
    {
      formula: '=SEG.FOOT(40.927, 41.875, 53.981)',
      gives: 26.6894,
      says: 'the survey’s mean man has 27.1 cm',
    },
  ],
  seeAlso: ['SEG.ESTIMATE', 'LEAN.PARALLEL', 'LIFT.PITCH'],
  typical: [42, 41, 51],
  directions: { femur: 1, tibia: 1, trunk: 1 },
  compute: defaultFoot,
});
