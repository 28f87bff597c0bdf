import { defineFunction } from '../core/define.ts';
import { type Issue, issue } from '../core/issue.ts';
import { type BarRulePlacement, barRule, leanThatBalances } from '../posture/balance.ts';
import { demandOf, leanOf } from '../posture/lean.ts';
import { halve, highestLift } from '../posture/least-lift.ts';
import { footSteps, shown, step } from '../posture/steps.ts';
import { defaultFoot } from '../tables/foot.ts';
import { build, depthOr, lean, maxLift, setup } from '../tables/parameters.ts';
import { postureConstants } from '../tables/posture-constants.ts';
import * as say from '../tables/sources.ts';

/** Smallest lift, cm, or the issue that says the highest does not reach the lean. */
function liftFor(
  lean: number,
  femur: number,
  tibia: number,
  trunk: number,
  ankle: number,
  depth: number,
  maxLift: number,
  placement: BarRulePlacement,
  foot: number | undefined,
  stance: number,
): number | Issue {
  const balance = barRule(placement);
  const length = foot ?? defaultFoot(femur, tibia, trunk);
  const at = (lift: number): number =>
    leanOf(balance, femur, tibia, trunk, ankle, lift, depth, length, stance);
  if (at(0) <= lean) return 0;
  const highest = highestLift(maxLift, ankle, length);
  // a lift carries the hip forward, so the lean falls all the way; far enough it leaves the postures at their upright end
  const reached = (lift: number): boolean => {
    const share = demandOf(balance, femur, tibia, trunk, ankle, lift, depth, length, stance);
    return share < -1 || leanThatBalances(balance, share) <= lean;
  };
  const least = reached(highest) ? halve(reached, 0, highest, 1e-9) : Number.NaN;
  if (at(least) <= lean) return least;
  const there = at(highest);
  const short = highest < maxLift;
  return issue('#N/A', 'lift-not-enough', {
    parameter: 'lean',
    received: lean,
    unit: 'deg',
    details: {
      highest,
      limit: short ? 'the foot and the shank allow no more' : '"max_lift"',
      at: Number.isNaN(there) ? 'no posture is balanced' : `the lean is ${Number(there.toFixed(2))} deg`,
    },
    remedy: `${short ? 'Check "foot" and "ankle"' : 'Raise "max_lift"'}, or ask for more lean.`,
  });
}

/** LIFT.FOR.LEAN: smallest lift, cm, to 1e−6. @throws nothing; a lean that max_lift does not reach gives #N/A. */
export default defineFunction({
  name: 'LIFT.FOR.LEAN',
  family: 'lift',
  summary: 'Smallest heel lift with which the model’s minimum lean is no more than wanted.',
  searchWords: ['choose a lift', 'wedge height', 'target lean', 'how high a heel', 'how much heel'],
  parameters: [lean(), ...build, depthOr(), maxLift(), ...setup],
  result: { is: 'number', unit: 'cm', about: 'smallest heel lift; 0 if the lean is low enough already' },
  rule: 'smallest h from 0 to max_lift with LEAN.AT(depth, …, h) ≤ lean',
  sources: [say.linkGeometry, say.barOverMidFoot, say.wholeAnkleRange, ...say.liftStudies],
  constants: postureConstants,
  cautions: [say.liftCaution, say.heelAdvice, say.leanError, say.modelCaution, say.painCaution],
  notes: [
    'A heel lift without a balanced posture counts as not enough. LIFT.PICK takes the next available height.',
    say.upToNote,
    say.ceilingNote,
    say.liftStudiesNote,
    say.angleNote,
    say.weightBearingNote,
  ],
  examples: [
    { formula: '=LIFT.FOR.LEAN(40, 45, 40, 48, 30)', gives: 1.86325 },
    { formula: '=LIFT.FOR.LEAN(45, 42, 41, 51, 38)', gives: 0, says: 'there already' },
    { formula: '=LIFT.FOR.LEAN(25, 45, 40, 48, 30, 0, 3)', gives: '#N/A', says: 'not with 3 cm' },
  ],
  seeAlso: ['LIFT.PICK', 'LIFT.CHANGE', 'LIFT.FOR.DEPTH', 'ANKLE.NEEDED'],
  typical: [42, 45, 40, 48, 30, 5, 6, 'high-bar', 26, 10],
  directions: { lean: -1, femur: 1, tibia: -1, trunk: -1, ankle: -1 },
  compute: liftFor,
  steps: (lean, femur, tibia, trunk, ankle, depth, maxLift, placement, foot, stance) => {
    const length = foot ?? defaultFoot(femur, tibia, trunk);
    const least = liftFor(lean, femur, tibia, trunk, ankle, depth, maxLift, placement, foot, stance);
    const at = (lift: number) =>
      shown(leanOf(barRule(placement), femur, tibia, trunk, ankle, lift, depth, length, stance));
    const highest = highestLift(maxLift, ankle, length);
    return [
      ...footSteps(femur, tibia, trunk, foot),
      step('Lean on the flat', 'β₀', 'LEAN.AT with lift 0', at(0), 'deg'),
      step('Maximum heel lift tried', 'h_max', 'max_lift, or what foot and shank allow', highest, 'cm'),
      step('Lean with it', '', 'LEAN.AT', at(highest), 'deg'),
      step('Smallest heel lift', 'h', 'halving', typeof least === 'number' ? least : 'none', 'cm'),
      step('Lean with that', 'β', 'LEAN.AT', typeof least === 'number' ? at(least) : 'none', 'deg'),
    ];
  },
});
