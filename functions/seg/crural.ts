import { defineFunction } from '../core/define.ts';
import { definition } from '../core/source.ts';
import { femur, tibia } from '../tables/parameters.ts';

/** SEG.CRURAL(tibia, femur): 100 tibia/femur, per cent. @throws nothing. */
export default defineFunction({
  name: 'SEG.CRURAL',
  family: 'segments',
  summary: 'Crural index: tibia as a percentage of the femur.',
  searchWords: ['tibia to femur', 'shin to thigh', 'proportion'],
  parameters: [tibia(), femur()],
  result: { is: 'number', unit: '%', about: '100 × tibia / femur' },
  rule: '100 × tibia / femur',
  sources: [definition('the crural index of anthropometry')],
  notes: [
    'Bone lengths taken on skeletons give other figures than lengths taken over the skin: compare like with like.',
  ],
  examples: [
    { formula: '=SEG.CRURAL(41, 42)', gives: 97.619 },
    { formula: '=SEG.CRURAL(42.3, 41.9)', gives: 100.955, says: 'the first man of the 2012 survey' },
  ],
  seeAlso: ['SEG.RATIO', 'SEG.CORMIC', 'SEG.NORM'],
  typical: [41, 42],
  directions: { tibia: 1, femur: -1 },
  compute: (tibia, femur) => (100 * tibia) / femur,
});
