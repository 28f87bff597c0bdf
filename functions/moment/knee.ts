import { defineFunction } from '../core/define.ts';
import { cos } from '../posture/angle.ts';
import { noBarWithArmsForward } from '../posture/arms-forward.ts';
import { kneeMoment } from '../posture/load.ts';
import { kneeSteps } from '../posture/load-steps.ts';
import { kneeConstants } from '../tables/load-constants.ts';
import { anyPlacement, bar, bodyMass, depthOr, femur, lean, stance, trunk } from '../tables/parameters.ts';
import * as say from '../tables/sources.ts';

/** MOMENT.KNEE: N·m that the knees bear, both sides. @throws nothing; arms forward with a bar gives #VALUE!. */
export default defineFunction({
  name: 'MOMENT.KNEE',
  family: 'moments',
  summary: 'Moment that the knees bear from thighs, upper body and bar.',
  searchWords: ['knee torque', 'knee extension demand', 'quadriceps', 'leverage', 'moment arm'],
  parameters: [lean(), femur(), trunk(), bodyMass(), bar(), depthOr(), anyPlacement(), stance()],
  result: { is: 'number', unit: 'N·m', about: 'both knees together, plus asks for extension' },
  rule: 'g [.200 mass × .567 F_x + mass (.678 F_x − U) + bar (F_x − x_u)], F_x = femur × cos depth × cos stance',
  sources: [say.statics, say.linkGeometry],
  constants: kneeConstants,
  cautions: [say.modelCaution, say.liftCaution, say.loadCaution, say.painCaution],
  notes: [
    say.observedPosture,
    say.staticLoad,
    'With toe-out this is the part seen from the side; what the knee bears sideways is not in it.',
    say.angleNote,
  ],
  examples: [
    { formula: '=MOMENT.KNEE(40, 42, 51, 80, 100)', gives: 276.489 },
    {
      formula: '=MOMENT.KNEE(30, 42, 51, 80, 100, 0, "front")',
      gives: 290.695,
      says: 'more upright: the knees take more',
    },
  ],
  seeAlso: ['MOMENT.HIP', 'MOMENT.SHARE', 'LEAN.KNEE'],
  typical: [40, 42, 51, 80, 100, 5, 'high-bar', 10],
  directions: { lean: -1, femur: 1, trunk: -1, stance: -1, depth: -1 },
  clash: (_lean, _femur, _trunk, _mass, bar, _depth, placement) => noBarWithArmsForward(placement, bar),
  compute: (lean, femur, trunk, mass, bar, depth, placement, stance) =>
    kneeMoment(lean, femur * cos(depth) * cos(stance), trunk, mass, bar, placement),
  steps: kneeSteps,
});
