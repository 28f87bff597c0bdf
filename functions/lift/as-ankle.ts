import { defineFunction } from '../core/define.ts';
import { isIssue } from '../core/issue.ts';
import { standsFor } from '../posture/equivalent.ts';
import { equivalentSteps } from '../posture/equivalent-steps.ts';
import { build, depthOr, lift, setup } from '../tables/parameters.ts';
import { postureConstants } from '../tables/posture-constants.ts';
import * as say from '../tables/sources.ts';

/** LIFT.AS.ANKLE: more ankle range, deg, of the same lean. @throws nothing; no such ankle gives #NUM!. */
export default defineFunction({
  name: 'LIFT.AS.ANKLE',
  family: 'lift',
  summary: 'How much more ankle range would give the lean of a heel lift on the flat.',
  searchWords: ['heel lift equals dorsiflexion', 'mobility', 'equivalent'],
  parameters: [lift(), ...build, depthOr(), ...setup],
  result: { is: 'number', unit: 'deg', about: 'more ankle range with the same lean' },
  rule: 'ankle range of the same lean on the flat − ankle',
  sources: [say.linkGeometry, say.barOverMidFoot, say.wholeAnkleRange, ...say.liftStudies],
  constants: postureConstants,
  cautions: [say.liftCaution, say.heelAdvice, say.leanError, say.modelCaution],
  notes: [
    'Of the three equivalents this is the one to lead with: it hangs little on the lengths.',
    say.ceilingNote,
    say.liftStudiesNote,
    say.angleNote,
  ],
  examples: [
    { formula: '=LIFT.AS.ANKLE(2, 42, 41, 51, 38)', gives: 7.36414 },
    {
      formula: '=LIFT.AS.ANKLE(1, 45, 40, 48, 30, 10, "low-bar", 26)',
      gives: 3.58846,
      says: '10° above parallel, low bar',
    },
  ],
  seeAlso: ['LIFT.AS.TIBIA', 'LIFT.AS.FEMUR', 'LIFT.CHANGE'],
  typical: [1.5, 42, 41, 51, 36, 5, 'high-bar', 26, 10],
  directions: { lift: 1 },
  compute: (lift, femur, tibia, trunk, ankle, depth, placement, foot, stance) => {
    const same = standsFor('ankle', lift, femur, tibia, trunk, ankle, depth, placement, foot, stance);
    return isIssue(same) ? same : same - ankle;
  },
  steps: (lift, femur, tibia, trunk, ankle, depth, placement, foot, stance) =>
    equivalentSteps('ankle', lift, femur, tibia, trunk, ankle, depth, placement, foot, stance),
});
