import { defineFunction } from '../core/define.ts';
import { isIssue } from '../core/issue.ts';
import { standsFor } from '../posture/equivalent.ts';
import { equivalentSteps } from '../posture/equivalent-steps.ts';
import { build, depthOr, lift, setup } from '../tables/parameters.ts';
import { postureConstants } from '../tables/posture-constants.ts';
import * as say from '../tables/sources.ts';

/** LIFT.AS.TIBIA: longer tibia, cm, of the same lean. @throws nothing; no such tibia gives #NUM!. */
export default defineFunction({
  name: 'LIFT.AS.TIBIA',
  family: 'lift',
  summary: 'How much longer a tibia would have to be on the flat for the lean that a heel lift gives.',
  searchWords: ['heel lift equals tibia', 'longer shin', 'equivalent'],
  parameters: [lift(), ...build, depthOr(), ...setup],
  result: { is: 'number', unit: 'cm', about: 'longer tibia with the same lean' },
  rule: 'tibia of the same lean on the flat − tibia',
  sources: [say.linkGeometry, say.barOverMidFoot, say.wholeAnkleRange, ...say.liftStudies],
  constants: postureConstants,
  cautions: [say.liftCaution, say.heelAdvice, say.leanError, say.modelCaution],
  notes: [
    'See LIFT.AS.ANKLE first: with a stiff ankle the tibia’s figure grows without bound, since a nearly upright shank carries the knee hardly forward however long it is.',
    'A heel lift acts like a longer tibia: a coaching saying, put in figures here for one lifter.',
    say.ceilingNote,
    say.liftStudiesNote,
    say.angleNote,
  ],
  examples: [
    { formula: '=LIFT.AS.TIBIA(2, 42, 41, 51, 38)', gives: 6.38812 },
    {
      formula: '=LIFT.AS.TIBIA(1, 45, 40, 48, 30, 10, "low-bar", 26)',
      gives: 4.2579,
      says: '10° above parallel, low bar',
    },
  ],
  seeAlso: ['LIFT.AS.ANKLE', 'LIFT.AS.FEMUR', 'LIFT.CHANGE'],
  typical: [1.5, 42, 41, 51, 36, 5, 'high-bar', 26, 10],
  directions: { lift: 1 },
  compute: (lift, femur, tibia, trunk, ankle, depth, placement, foot, stance) => {
    const same = standsFor('tibia', lift, femur, tibia, trunk, ankle, depth, placement, foot, stance);
    return isIssue(same) ? same : same - tibia;
  },
  steps: (lift, femur, tibia, trunk, ankle, depth, placement, foot, stance) =>
    equivalentSteps('tibia', lift, femur, tibia, trunk, ankle, depth, placement, foot, stance),
});
