import { defineFunction } from '../core/define.ts';
import { hipFlexion } from '../posture/flexion.ts';
import { step } from '../posture/steps.ts';
import { depthOr, lean, stance } from '../tables/parameters.ts';
import * as say from '../tables/sources.ts';

/** LEAN.HIP(lean, [depth], [stance]): hip flexion, deg. @throws nothing. */
export default defineFunction({
  name: 'LEAN.HIP',
  family: 'lean',
  summary: 'Hip flexion from trunk lean, depth of the thigh and toe-out angle.',
  searchWords: ['hip angle', 'hip bend', 'hip mobility'],
  parameters: [lean(), depthOr(), stance()],
  result: { is: 'number', unit: 'deg', about: 'angle between trunk and thigh, 0 straight, spine straight' },
  rule: '180 − acos(sin lean cos depth cos stance − cos lean sin depth); 90 + lean − depth at stance 0',
  sources: [say.linkGeometry],
  cautions: ['The spine is taken as straight: a rounded back shows as hip flexion here.', say.painCaution],
  notes: [say.angleNote, say.stanceNote],
  examples: [
    { formula: '=LEAN.HIP(45)', gives: 135 },
    { formula: '=LEAN.HIP(45, 0, 30)', gives: 127.761, says: 'knees turned out 30°' },
  ],
  seeAlso: ['LEAN.KNEE', 'LEAN.DEEPEST', 'LEAN.AT'],
  typical: [45, 10, 15],
  directions: { lean: 1, depth: -1, stance: -1 },
  compute: hipFlexion,
  steps: (lean, depth, stance) => [
    step('Hip flexion', 'hip', '180 − angle between trunk and thigh', hipFlexion(lean, depth, stance), 'deg'),
  ],
});
