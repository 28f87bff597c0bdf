import { defineFunction } from '../core/define.ts';
import { barRule, demand, given } from '../posture/balance.ts';
import { newLeg, pitchOf, setLeg } from '../posture/leg.ts';
import { footSteps, legSteps, step } from '../posture/steps.ts';
import { liftTooHigh, shankTooFlat } from '../posture/why.ts';
import { defaultFoot } from '../tables/foot.ts';
import { build, depthOr, lean, liftOr, setup } from '../tables/parameters.ts';
import { postureConstants } from '../tables/posture-constants.ts';
import * as say from '../tables/sources.ts';

const leg = newLeg();

/** LEAN.OFFSET: cm the bar is ahead (+) or behind (−) of mid-foot. @throws nothing; no posture gives #NUM!. */
export default defineFunction({
  name: 'LEAN.OFFSET',
  family: 'lean',
  summary: 'How far the bar is ahead (+) or behind (−) of mid-foot when a lifter holds a lean.',
  searchWords: ['bar path', 'toppling', 'balance', 'falling backward', 'upright cue'],
  parameters: [lean(), ...build, liftOr(), depthOr(), ...setup],
  result: {
    is: 'number',
    unit: 'cm',
    about: 'bar, or with "arms-forward" the body’s centre of mass, ahead of mid-foot',
  },
  rule: 'A sinβ + C cosβ − D: 0 at the lean of LEAN.AT',
  sources: [say.linkGeometry, say.barOverMidFoot, say.wholeAnkleRange],
  constants: postureConstants,
  cautions: [say.modelCaution, say.painCaution, say.loadCaution],
  notes: [
    'Behind mid-foot means toppling backward, ahead of it means forward; the feet can hold what stays well between heel and toes.',
    'Shows why "stay upright" cannot be had from a build and an ankle that ask for more lean.',
    say.angleNote,
    say.stanceNote,
    say.armsForwardNote,
  ],
  examples: [
    {
      formula: '=LEAN.OFFSET(20, 42, 41, 51, 38)',
      gives: -10.1646,
      says: 'too upright: the bar is behind mid-foot',
    },
    { formula: '=LEAN.OFFSET(50, 42, 41, 51, 38, 0, 0, "front")', gives: 18.9263 },
  ],
  seeAlso: ['LEAN.PARALLEL', 'LEAN.AT', 'LEAN.LOADED'],
  typical: [40, 42, 41, 51, 38, 1, 5, 'high-bar', 26, 10],
  directions: { lean: 1, femur: -1, tibia: 1, trunk: 1, ankle: 1, lift: 1, depth: 1, stance: 1 },
  compute: (lean, femur, tibia, trunk, ankle, lift, depth, placement, foot, stance) => {
    const length = foot ?? defaultFoot(femur, tibia, trunk);
    const pitch = pitchOf(lift, length);
    if (!(ankle + pitch < 90)) return liftTooHigh(lift, length) ?? shankTooFlat(ankle, pitch)!;
    const balance = barRule(placement);
    setLeg(leg, femur, tibia, length, pitch, ankle + pitch, depth, stance);
    return (given(balance, trunk, lean) - demand(balance, leg, trunk)) / balance.weight;
  },
  steps: (lean, femur, tibia, trunk, ankle, lift, depth, placement, foot, stance) => {
    const length = foot ?? defaultFoot(femur, tibia, trunk);
    const pitch = pitchOf(lift, length);
    const balance = barRule(placement);
    const leg = newLeg();
    setLeg(leg, femur, tibia, length, pitch, ankle + pitch, depth, stance);
    const forward = given(balance, trunk, lean) / balance.weight;
    const asked = demand(balance, leg, trunk) / balance.weight;
    return [
      ...footSteps(femur, tibia, trunk, foot),
      ...legSteps(femur, tibia, ankle, lift, depth, length, stance),
      step(
        'What the trunk has to balance',
        'D',
        placement === 'arms-forward' ? 'from the masses' : '−x_H',
        asked,
        'cm',
      ),
      step('What this lean brings forward', 'A sinβ + C cosβ', 'from trunk and placement', forward, 'cm'),
      step('Ahead (+) or behind (−) of mid-foot', 'x', 'A sinβ + C cosβ − D', forward - asked, 'cm'),
    ];
  },
});
