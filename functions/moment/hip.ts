import { defineFunction } from '../core/define.ts';
import { noBarWithArmsForward } from '../posture/arms-forward.ts';
import { hipMoment } from '../posture/load.ts';
import { hipSteps } from '../posture/load-steps.ts';
import { hipConstants } from '../tables/load-constants.ts';
import { anyPlacement, bar, bodyMass, lean, trunk } from '../tables/parameters.ts';
import * as say from '../tables/sources.ts';

/** MOMENT.HIP: N·m that the hips bear, both sides. @throws nothing; arms forward with a bar gives #VALUE!. */
export default defineFunction({
  name: 'MOMENT.HIP',
  family: 'moments',
  summary: 'Moment that the hips bear from upper body and bar.',
  searchWords: ['hip torque', 'hip extension demand', 'leverage', 'moment arm'],
  parameters: [lean(), trunk(), bodyMass(), bar(), anyPlacement()],
  result: { is: 'number', unit: 'N·m', about: 'both hips together, plus asks for extension' },
  rule: 'g [mass × U + bar × (along × trunk sin lean + ahead × trunk cos lean)]',
  sources: [say.statics, say.linkGeometry],
  constants: hipConstants,
  cautions: [say.modelCaution, say.loadCaution, say.painCaution],
  notes: [say.observedPosture, say.staticLoad, say.angleNote],
  examples: [
    { formula: '=MOMENT.HIP(40, 51, 80, 100)', gives: 396.159 },
    {
      formula: '=MOMENT.HIP(30, 51, 80, 100, "front")',
      gives: 381.953,
      says: 'a front squat, more upright',
    },
    { formula: '=MOMENT.HIP(30, 51, 80, 0, "arms-forward")', gives: 120.77, says: 'without a bar' },
  ],
  seeAlso: ['MOMENT.KNEE', 'MOMENT.SHARE', 'MOMENT.BACK', 'LEAN.PARALLEL'],
  typical: [40, 51, 80, 100, 'high-bar'],
  directions: { lean: 1, trunk: 1, mass: 1, bar: 1 },
  clash: (_lean, _trunk, _mass, bar, placement) => noBarWithArmsForward(placement, bar),
  compute: hipMoment,
  steps: hipSteps,
});
