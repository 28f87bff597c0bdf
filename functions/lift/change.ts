import { defineFunction } from '../core/define.ts';
import { isIssue } from '../core/issue.ts';
import { barRule } from '../posture/balance.ts';
import { barRuleLean } from '../posture/lean.ts';
import { leanSteps, shown, step } from '../posture/steps.ts';
import { build, depthOr, lift, setup } from '../tables/parameters.ts';
import { postureConstants } from '../tables/posture-constants.ts';
import * as say from '../tables/sources.ts';

/** LIFT.CHANGE: lean with a lift less lean without, deg. @throws nothing; no balanced posture gives #NUM!. */
export default defineFunction({
  name: 'LIFT.CHANGE',
  family: 'lift',
  summary: 'How much a heel lift changes the trunk lean: negative is more upright.',
  searchWords: ['heel lift', 'wedge', 'lifting shoes', 'more upright', 'elevation'],
  parameters: [lift(), ...build, depthOr(), ...setup],
  result: { is: 'number', unit: 'deg', about: 'lean with the heel lift less lean without' },
  rule: 'LEAN.AT(depth, …, lift) − LEAN.AT(depth, …, 0)',
  sources: [say.linkGeometry, say.barOverMidFoot, say.wholeAnkleRange, ...say.liftStudies],
  constants: postureConstants,
  cautions: [say.leanError, say.liftCaution, say.heelAdvice, say.modelCaution, say.painCaution],
  notes: [say.ceilingNote, say.liftStudiesNote, say.angleNote, say.stanceNote, say.weightBearingNote],
  examples: [
    { formula: '=LIFT.CHANGE(2, 42, 41, 51, 38)', gives: -4.8428 },
    {
      formula: '=LIFT.CHANGE(2, 45, 40, 48, 30, 0, "low-bar")',
      gives: -7.5621,
      says: 'long femur, short trunk, stiff ankle: the same heel lift does more',
    },
  ],
  seeAlso: ['LIFT.AS.ANKLE', 'LIFT.FOR.LEAN', 'LEAN.PARALLEL', 'LIFT.PITCH'],
  typical: [1.5, 42, 41, 51, 38, 5, 'high-bar', 26, 10],
  directions: { lift: -1 },
  compute: (lift, femur, tibia, trunk, ankle, depth, placement, foot, stance) => {
    const lifted = barRuleLean(femur, tibia, trunk, ankle, lift, depth, placement, foot, stance);
    if (isIssue(lifted)) return lifted;
    const flat = barRuleLean(femur, tibia, trunk, ankle, 0, depth, placement, foot, stance);
    return isIssue(flat) ? flat : lifted - flat;
  },
  steps: (lift, femur, tibia, trunk, ankle, depth, placement, foot, stance) => {
    const rule = barRule(placement);
    const lean = (h: number) => barRuleLean(femur, tibia, trunk, ankle, h, depth, placement, foot, stance);
    const figure = (value: ReturnType<typeof lean>) => (isIssue(value) ? Number.NaN : value);
    const lifted = figure(lean(lift));
    const flat = figure(lean(0));
    return [
      ...leanSteps(rule, femur, tibia, trunk, ankle, lift, depth, placement, foot, stance),
      step('Lean without the heel lift', 'β₀', 'the same with lift 0', shown(flat), 'deg'),
      step('Change of lean', 'β − β₀', 'with the heel lift less without', shown(lifted - flat), 'deg'),
    ];
  },
});
