import { defineFunction } from '../core/define.ts';
import { type Issue, issue } from '../core/issue.ts';
import { type BarRulePlacement, barRule } from '../posture/balance.ts';
import { deepestOf } from '../posture/deepest.ts';
import { descentSteps } from '../posture/descent-steps.ts';
import { halve, liftsUpTo } from '../posture/least-lift.ts';
import { leverOf } from '../posture/leg.ts';
import { step } from '../posture/steps.ts';
import { defaultFoot } from '../tables/foot.ts';
import { build, depth, limits, maxLift, setup } from '../tables/parameters.ts';
import { postureConstants } from '../tables/posture-constants.ts';
import * as say from '../tables/sources.ts';

const STEP = 0.05;

/** Smallest lift, cm, or the issue that says the highest does not reach the depth. */
function liftFor(
  depth: number,
  femur: number,
  tibia: number,
  trunk: number,
  ankle: number,
  maxLift: number,
  placement: BarRulePlacement,
  foot: number | undefined,
  stance: number,
  maxLean: number,
  maxHip: number,
  maxKnee: number,
): number | Issue {
  const length = foot ?? defaultFoot(femur, tibia, trunk);
  const balance = barRule(placement);
  const at = (lift: number): number =>
    deepestOf(balance, femur, tibia, trunk, ankle, lift, length, stance, maxLean, maxHip, maxKnee);
  const serves = (lift: number): boolean => at(lift) <= depth;
  const highest = Math.min(maxLift, leverOf(length) * (1 - 1e-12));
  let before = 0;
  for (const lift of liftsUpTo(highest, STEP)) {
    if (serves(lift)) return lift === 0 ? 0 : halve(serves, before, lift, 1e-6);
    before = lift;
  }
  const there = at(highest);
  const short = highest < maxLift;
  return issue('#N/A', 'lift-not-enough', {
    parameter: 'depth',
    received: depth,
    unit: 'deg',
    details: {
      highest,
      limit: short ? 'the foot allows no more' : '"max_lift"',
      at: Number.isNaN(there)
        ? 'no posture is balanced'
        : `the deepest position is ${Number(there.toFixed(2))} deg`,
    },
    remedy: `${short ? 'Check "foot"' : 'Raise "max_lift"'}, or ask for less depth.`,
  });
}

/** LIFT.FOR.DEPTH: smallest lift, cm, to .001. @throws nothing; a depth that max_lift does not reach gives #N/A. */
export default defineFunction({
  name: 'LIFT.FOR.DEPTH',
  family: 'lift',
  summary: 'Smallest heel lift with which a depth is reached within the limits of lean, hip and knee.',
  searchWords: ['choose a lift', 'reach parallel', 'deep squat', 'wedge height', 'depth'],
  parameters: [depth(), ...build, maxLift(), ...setup, ...limits],
  result: { is: 'number', unit: 'cm', about: 'smallest heel lift; 0 if the depth is reached without one' },
  rule: 'first h, going up from 0 in steps of .05 cm, with LEAN.DEEPEST(…, h) ≤ depth; then halved to .001 cm',
  sources: [say.linkGeometry, say.barOverMidFoot, say.limitsAssumed, ...say.liftStudies],
  constants: postureConstants,
  cautions: [
    say.liftCaution,
    say.heelAdvice,
    say.limitsCaution,
    say.leanError,
    say.modelCaution,
    say.painCaution,
  ],
  notes: [
    'Compare LEAN.AT at the same depth and heel lift: a depth can be reached with more lean than is wanted.',
    'LEAN.DEEPEST stops at −45°, so a depth below that is never reached.',
    say.upToNote,
    say.ceilingNote,
    say.liftStudiesNote,
    say.angleNote,
    say.weightBearingNote,
  ],
  examples: [
    { formula: '=LIFT.FOR.DEPTH(0, 46, 38, 47, 24)', gives: 0.4 },
    {
      formula: '=LEAN.AT(0, 46, 38, 47, 24, 2.5)',
      gives: 47.1142,
      says: 'the lean at parallel with a heel lift of 2.5 cm',
    },
    { formula: '=LIFT.FOR.DEPTH(-10, 46, 38, 47, 24, 1)', gives: '#N/A', says: 'not with 1 cm' },
  ],
  seeAlso: ['LEAN.DEEPEST', 'LEAN.AT', 'LIFT.PICK', 'LEAN.LIMITER'],
  typical: [0, 46, 38, 47, 24, 5, 'high-bar', 26, 0, 60, 145, 155],
  directions: { depth: -1 },
  compute: liftFor,
  steps: (depth, femur, tibia, trunk, ankle, maxLift, placement, foot, stance, maxLean, maxHip, maxKnee) => {
    const least = liftFor(
      depth,
      femur,
      tibia,
      trunk,
      ankle,
      maxLift,
      placement,
      foot,
      stance,
      maxLean,
      maxHip,
      maxKnee,
    );
    const lift = typeof least === 'number' ? least : maxLift;
    return [
      step(
        'Smallest heel lift',
        'h',
        'first step that serves, then halved',
        typeof least === 'number' ? least : 'none',
        'cm',
      ),
      step('Heel lift tried below', '', typeof least === 'number' ? 'the smallest' : 'max_lift', lift, 'cm'),
      ...descentSteps(femur, tibia, trunk, ankle, lift, placement, foot, stance, maxLean, maxHip, maxKnee),
    ];
  },
});
