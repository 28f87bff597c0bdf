import { defineFunction } from '../core/define.ts';
import { barRule } from '../posture/balance.ts';
import { deepestOf } from '../posture/deepest.ts';
import { descentSteps } from '../posture/descent-steps.ts';
import { whyNoDescent } from '../posture/why.ts';
import { defaultFoot } from '../tables/foot.ts';
import { build, liftOr, limits, setup } from '../tables/parameters.ts';
import { postureConstants } from '../tables/posture-constants.ts';
import * as say from '../tables/sources.ts';

/** LEAN.DEEPEST: deg above (−: below) parallel, not below −45. @throws nothing; nothing at 60° gives #NUM!. */
export default defineFunction({
  name: 'LEAN.DEEPEST',
  family: 'lean',
  summary:
    'The deepest position that lean, hip, knee and ankle allow, in degrees above (+) or below (−) parallel.',
  searchWords: ['depth', 'squat depth', 'below parallel', 'how deep', 'mobility limit', 'full squat'],
  parameters: [...build, liftOr(), ...setup, ...limits],
  result: { is: 'number', unit: 'deg', about: 'thigh above (+) or below (−) parallel' },
  rule: 'down from 60°, the last depth with lean ≤ max_lean, hip flexion ≤ max_hip and the shin angle at the smaller of ankle + pitch and max_knee − 90 + depth',
  sources: [say.linkGeometry, say.barOverMidFoot, say.limitsAssumed],
  constants: postureConstants,
  cautions: [say.limitsCaution, say.leanError, say.modelCaution, say.painCaution, say.loadCaution],
  notes: [
    'The first failure on the way down ends the search. The lean peaks at parallel, so the answer can jump when a limit is loosened a little.',
    'Error at most .01°. Not searched below −45°.',
    'Deeper positions with less than the whole ankle range used are not considered, except where the knee asks for it.',
    say.angleNote,
    say.stanceNote,
    say.weightBearingNote,
    say.armsForwardNote,
  ],
  examples: [
    { formula: '=LEAN.DEEPEST(42, 41, 51, 38)', gives: -28.1 },
    {
      formula: '=LEAN.DEEPEST(46, 38, 47, 24)',
      gives: 1.6,
      says: 'a long femur and a stiff ankle: the descent ends just above parallel',
    },
    {
      formula: '=LEAN.DEEPEST(46, 38, 47, 24, 2.5)',
      gives: -8.8,
      says: 'the same with a heel lift of 2.5 cm',
    },
  ],
  seeAlso: ['LEAN.LIMITER', 'LIFT.FOR.DEPTH', 'LEAN.AT', 'LEAN.HIP', 'LEAN.KNEE'],
  typical: [45, 39, 48, 26, 1, 'high-bar', 26, 10, 55, 140, 150],
  compute: (femur, tibia, trunk, ankle, lift, placement, foot, stance, maxLean, maxHip, maxKnee) => {
    const length = foot ?? defaultFoot(femur, tibia, trunk);
    const balance = barRule(placement);
    const depth = deepestOf(
      balance,
      femur,
      tibia,
      trunk,
      ankle,
      lift,
      length,
      stance,
      maxLean,
      maxHip,
      maxKnee,
    );
    return !Number.isNaN(depth) ? depth : whyNoDescent(lift, length, maxLean, maxHip, maxKnee);
  },
  steps: descentSteps,
});
