import { defineFunction } from '../core/define.ts';
import { isIssue } from '../core/issue.ts';
import { standsFor } from '../posture/equivalent.ts';
import { equivalentSteps } from '../posture/equivalent-steps.ts';
import { build, depthOr, lift, setup } from '../tables/parameters.ts';
import { postureConstants } from '../tables/posture-constants.ts';
import * as say from '../tables/sources.ts';

/** LIFT.AS.FEMUR: shorter femur, cm, of the same lean. @throws nothing; no such femur gives #NUM!. */
export default defineFunction({
  name: 'LIFT.AS.FEMUR',
  family: 'lift',
  summary: 'How much shorter a femur would have to be on the flat for the lean that a heel lift gives.',
  searchWords: ['heel lift equals femur', 'shorter thigh', 'equivalent'],
  parameters: [lift(), ...build, depthOr(), ...setup],
  result: { is: 'number', unit: 'cm', about: 'shorter femur with the same lean' },
  rule: 'femur − femur of the same lean on the flat',
  sources: [say.linkGeometry, say.barOverMidFoot, say.wholeAnkleRange, ...say.liftStudies],
  constants: postureConstants,
  cautions: [say.liftCaution, say.heelAdvice, say.leanError, say.modelCaution],
  notes: [
    'See LIFT.AS.ANKLE first: it says what the heel lift does, whatever the lengths.',
    say.ceilingNote,
    say.liftStudiesNote,
    say.angleNote,
  ],
  examples: [
    { formula: '=LIFT.AS.FEMUR(2, 42, 41, 51, 38)', gives: 3.93292 },
    {
      formula: '=LIFT.AS.FEMUR(1, 45, 40, 48, 30, 10, "low-bar", 26)',
      gives: 2.16179,
      says: '10° above parallel, low bar',
    },
  ],
  seeAlso: ['LIFT.AS.ANKLE', 'LIFT.AS.TIBIA', 'LIFT.CHANGE'],
  typical: [1.5, 42, 41, 51, 36, 5, 'high-bar', 26, 10],
  directions: { lift: 1 },
  compute: (lift, femur, tibia, trunk, ankle, depth, placement, foot, stance) => {
    const same = standsFor('femur', lift, femur, tibia, trunk, ankle, depth, placement, foot, stance);
    return isIssue(same) ? same : femur - same;
  },
  steps: (lift, femur, tibia, trunk, ankle, depth, placement, foot, stance) =>
    equivalentSteps('femur', lift, femur, tibia, trunk, ankle, depth, placement, foot, stance),
});
