import { defineFunction } from '../core/define.ts';
import { barRule } from '../posture/balance.ts';
import { barRuleLean } from '../posture/lean.ts';
import { leanSteps } from '../posture/steps.ts';
import { build, liftOr, setup } from '../tables/parameters.ts';
import { postureConstants } from '../tables/posture-constants.ts';
import * as say from '../tables/sources.ts';

/** LEAN.PARALLEL: trunk lean, deg, at parallel by the bar rule. @throws nothing; no balanced posture gives #NUM!. */
export default defineFunction({
  name: 'LEAN.PARALLEL',
  family: 'lean',
  summary: 'Trunk lean from the vertical with the thigh level and the bar over mid-foot.',
  searchWords: [
    'lean',
    'squat',
    'forward lean',
    'trunk angle',
    'torso',
    'upright',
    'proportions',
    'bar rule',
  ],
  parameters: [...build, liftOr(), ...setup],
  result: { is: 'number', unit: 'deg', about: 'minimum trunk lean at parallel' },
  rule: 'shank = ankle + pitch; knee, then hip from mid-foot; lean = asin(−x_hip / √(A² + C²)) − atan2(C, A), bar at A along and C ahead of the trunk',
  sources: [say.linkGeometry, say.barOverMidFoot, say.wholeAnkleRange, say.sato2013],
  constants: postureConstants,
  cautions: [say.leanError, say.modelCaution, say.painCaution, say.loadCaution],
  notes: [
    say.angleNote,
    say.minimumLeanNote,
    say.rangeUsedNote,
    say.twoRulesNote,
    say.stanceNote,
    say.weightBearingNote,
    say.armsForwardNote,
  ],
  examples: [
    { formula: '=LEAN.PARALLEL(42, 41, 51, 38)', gives: 32.2023 },
    {
      formula: '=LEAN.PARALLEL(42, 41, 51, 38, 2, "low-bar")',
      gives: 31.7211,
      says: 'the same lifter with the bar lower on the back and a heel lift of 2 cm',
    },
  ],
  seeAlso: ['LEAN.AT', 'LEAN.ERROR', 'LEAN.PART', 'LIFT.CHANGE', 'LIFT.FOR.LEAN'],
  typical: [42, 41, 51, 38, 1, 'high-bar', 26, 10],
  directions: { femur: 1, tibia: -1, trunk: -1, ankle: -1, lift: -1, stance: -1, foot: 1 },
  compute: (femur, tibia, trunk, ankle, lift, placement, foot, stance) =>
    barRuleLean(femur, tibia, trunk, ankle, lift, 0, placement, foot, stance),
  steps: (femur, tibia, trunk, ankle, lift, placement, foot, stance) =>
    leanSteps(barRule(placement), femur, tibia, trunk, ankle, lift, 0, placement, foot, stance),
});
