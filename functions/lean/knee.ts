import { defineFunction } from '../core/define.ts';
import { kneeFlexion } from '../posture/flexion.ts';
import { step } from '../posture/steps.ts';
import { depthOr, shank } from '../tables/parameters.ts';
import * as say from '../tables/sources.ts';

/** LEAN.KNEE(shank, [depth]): knee flexion, deg. @throws nothing. */
export default defineFunction({
  name: 'LEAN.KNEE',
  family: 'lean',
  summary: 'Knee flexion from the shin angle and the depth of the thigh.',
  searchWords: ['knee angle', 'knee bend', 'internal knee angle'],
  parameters: [shank(), depthOr()],
  result: { is: 'number', unit: 'deg', about: 'knee flexion, 0 straight' },
  rule: '90 + shank − depth',
  sources: [say.linkGeometry],
  cautions: ['Above 155° is more than most knees have.'],
  notes: [say.angleNote],
  examples: [
    { formula: '=LEAN.KNEE(38)', gives: 128 },
    {
      formula: '=LEAN.KNEE(30.53, 20.94)',
      gives: 99.59,
      says: 'shin and thigh angles as measured by Sato 2013',
    },
  ],
  seeAlso: ['LEAN.HIP', 'LEAN.SHANK', 'LEAN.KNEE.AHEAD'],
  typical: [38, 10],
  directions: { shank: 1, depth: -1 },
  compute: kneeFlexion,
  steps: (shank, depth) => [
    step('Knee flexion', 'knee', '90 + shank − depth', kneeFlexion(shank, depth), 'deg'),
  ],
});
