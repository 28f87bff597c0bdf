import { defineFunction } from '../core/define.ts';
import { isIssue } from '../core/issue.ts';
import { cos } from '../posture/angle.ts';
import { ankleFor } from '../posture/ankle-needed.ts';
import { barRule, given } from '../posture/balance.ts';
import { kneeAheadFor } from '../posture/inverse.ts';
import { newLeg, pitchOf, setLeg } from '../posture/leg.ts';
import { footSteps, pitchSteps, shown, step } from '../posture/steps.ts';
import { defaultFoot } from '../tables/foot.ts';
import { depthOr, femur, lean, liftOr, setup, tibia, trunk } from '../tables/parameters.ts';
import { postureConstants } from '../tables/posture-constants.ts';
import * as say from '../tables/sources.ts';

/** ANKLE.NEEDED: ankle range, deg, for a lean by the bar rule. @throws nothing; outside −10 to 70 gives #NUM!. */
export default defineFunction({
  name: 'ANKLE.NEEDED',
  family: 'ankle',
  summary: 'Ankle range at which the bar rule gives a target trunk lean.',
  searchWords: ['mobility goal', 'dorsiflexion needed', 'target', 'how much ankle'],
  parameters: [lean(), femur(), tibia(), trunk(), liftOr(), depthOr(), ...setup],
  result: { is: 'number', unit: 'deg', about: 'weight-bearing ankle range' },
  rule: 'shank = asin((x_hip for that lean + femur × cos depth − x_ankle) / tibia); ankle = shank − pitch',
  sources: [say.linkGeometry, say.barOverMidFoot, say.wholeAnkleRange],
  constants: postureConstants,
  cautions: [say.leanError, say.modelCaution, say.painCaution],
  notes: [
    'All lengths are fixed; only the ankle changes. Compare with the lifter’s own range: ANKLE.TO.WALL turns it into a distance to train for.',
    say.angleNote,
    say.weightBearingNote,
    say.armsForwardNote,
    say.stanceNote,
  ],
  examples: [
    { formula: '=ANKLE.NEEDED(40, 42, 41, 51)', gives: 28.0352 },
    {
      formula: '=ANKLE.NEEDED(40, 42, 41, 51, 1.5)',
      gives: 22.7376,
      says: 'with a heel lift of 1.5 cm less is needed',
    },
  ],
  seeAlso: ['LEAN.PARALLEL', 'ANKLE.TO.WALL', 'LIFT.FOR.LEAN'],
  typical: [40, 42, 41, 51, 1, 5, 'high-bar', 26, 10],
  directions: { lean: -1, femur: 1, tibia: -1, trunk: -1, lift: -1, depth: -1, stance: -1 },
  compute: ankleFor,
  steps: (lean, femur, tibia, trunk, lift, depth, placement, foot, stance) => {
    const balance = barRule(placement);
    const length = foot ?? defaultFoot(femur, tibia, trunk);
    const pitch = pitchOf(lift, length);
    const leg = newLeg();
    setLeg(leg, femur, tibia, length, pitch, 0, depth, stance);
    const ahead = kneeAheadFor(balance, trunk, lean, leg.ankle, femur * cos(depth), cos(stance));
    const ankle = ankleFor(lean, femur, tibia, trunk, lift, depth, placement, foot, stance);
    return [
      ...footSteps(femur, tibia, trunk, foot),
      ...pitchSteps(lift, length),
      step('What the lean balances', 'D', 'A sinβ + C cosβ', given(balance, trunk, lean), 'cm'),
      step('Ankle joint ahead of mid-foot', 'x_A − x_B', 'from foot and heel lift', shown(leg.ankle), 'cm'),
      step('Knee ahead of the ankle joint', 'x', 'what balances that D', shown(ahead), 'cm'),
      step('Ankle range', 'a', 'asin(x / tibia) − φ', isIssue(ankle) ? 'none in −10 to 70' : ankle, 'deg'),
    ];
  },
});
