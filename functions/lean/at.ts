import { defineFunction } from '../core/define.ts';
import { barRule } from '../posture/balance.ts';
import { barRuleLean } from '../posture/lean.ts';
import { leanSteps } from '../posture/steps.ts';
import { build, depth, liftOr, setup } from '../tables/parameters.ts';
import { postureConstants } from '../tables/posture-constants.ts';
import * as say from '../tables/sources.ts';

/** LEAN.AT: trunk lean, deg, at any depth by the bar rule. @throws nothing; no balanced posture gives #NUM!. */
export default defineFunction({
  name: 'LEAN.AT',
  family: 'lean',
  summary: 'Trunk lean from the vertical at any depth, with the bar over mid-foot.',
  searchWords: ['squat', 'depth', 'half squat', 'deep squat', 'forward lean', 'trunk angle'],
  parameters: [depth(), ...build, liftOr(), ...setup],
  result: { is: 'number', unit: 'deg', about: 'minimum trunk lean at that depth' },
  rule: 'as LEAN.PARALLEL, with the hip femur × cos depth behind the knee',
  sources: [say.linkGeometry, say.barOverMidFoot, say.wholeAnkleRange, say.sato2013],
  constants: postureConstants,
  cautions: [
    say.leanError,
    say.modelCaution,
    'Knee flexion (LEAN.KNEE) above 155° is more than most knees have: such a depth is not reached with the whole ankle range used.',
    say.painCaution,
    say.loadCaution,
  ],
  notes: [
    say.angleNote,
    say.minimumLeanNote,
    say.rangeUsedNote,
    say.twoRulesNote,
    'Leans are symmetric about parallel in this model, since only femur × cos depth enters: a deep position looks more upright here than it is.',
    say.stanceNote,
    say.weightBearingNote,
    say.armsForwardNote,
  ],
  examples: [
    { formula: '=LEAN.AT(20, 42, 41, 51, 38)', gives: 29.0621, says: '20° above parallel' },
    {
      formula: '=LEAN.AT(-15, 42, 41, 51, 38, 2, "front", 27, 20)',
      gives: 12.9223,
      says: '15° below parallel, front squat, 2 cm heel lift, toe-out 20°',
    },
  ],
  seeAlso: ['LEAN.PARALLEL', 'LEAN.DEEPEST', 'LEAN.KNEE', 'LEAN.HIP'],
  typical: [20, 42, 41, 51, 38, 1, 'high-bar', 26, 10],
  directions: { depth: -1, femur: 1, tibia: -1, trunk: -1, ankle: -1, lift: -1, stance: -1 },
  compute: (depth, femur, tibia, trunk, ankle, lift, placement, foot, stance) =>
    barRuleLean(femur, tibia, trunk, ankle, lift, depth, placement, foot, stance),
  steps: (depth, femur, tibia, trunk, ankle, lift, placement, foot, stance) =>
    leanSteps(barRule(placement), femur, tibia, trunk, ankle, lift, depth, placement, foot, stance),
});
