import type { Step } from '../core/define.ts';
import { defaultFoot } from '../tables/foot.ts';
import { type BarRulePlacement, barRule, demandShare, leanThatBalances } from './balance.ts';
import { deepestOf } from './deepest.ts';
import { hipFlexion, kneeFlexion } from './flexion.ts';
import { newLeg, pitchOf, setLeg } from './leg.ts';
import { footSteps, pitchSteps, shown, step } from './steps.ts';

/** The working of the deepest position: where it lies, and how far each limit is used there. */
export function descentSteps(
  femur: number,
  tibia: number,
  trunk: number,
  ankle: number,
  lift: number,
  placement: BarRulePlacement,
  foot: number | undefined,
  stance: number,
  maxLean: number,
  maxHip: number,
  maxKnee: number,
): Step[] {
  const length = foot ?? defaultFoot(femur, tibia, trunk);
  const balance = barRule(placement);
  const depth = deepestOf(
    balance,
    femur,
    tibia,
    trunk,
    ankle,
    lift,
    length,
    stance,
    maxLean,
    maxHip,
    maxKnee,
  );
  const pitch = pitchOf(lift, length);
  const shank = Math.min(ankle + pitch, maxKnee - 90 + depth);
  const leg = newLeg();
  setLeg(leg, femur, tibia, length, pitch, shank, depth, stance);
  const lean = leanThatBalances(balance, demandShare(balance, leg, trunk));
  return [
    ...footSteps(femur, tibia, trunk, foot),
    ...pitchSteps(lift, length),
    step('Deepest position', 'd', 'last depth within all limits', shown(depth), 'deg'),
    step('Shin angle there', 'σ', 'smaller of ankle + φ and max_knee − 90 + d', shown(shank), 'deg'),
    step('Lean there', 'β', `at most max_lean ${maxLean}`, shown(lean), 'deg'),
    step(
      'Hip flexion there',
      'hip',
      `at most max_hip ${maxHip}`,
      shown(hipFlexion(lean, depth, stance)),
      'deg',
    ),
    step(
      'Knee flexion there',
      'knee',
      `at most max_knee ${maxKnee}`,
      shown(kneeFlexion(shank, depth)),
      'deg',
    ),
  ];
}
