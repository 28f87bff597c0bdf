import { type Issue, issue } from '../core/issue.ts';
import { asin } from './angle.ts';
import { type Balance, demand } from './balance.ts';
import { leverOf, newLeg, pitchOf, setLeg } from './leg.ts';

/** The issue of a lift that reaches the ball of the foot, or undefined. */
export function liftTooHigh(lift: number, foot: number): Issue | undefined {
  if (lift === 0 || lift < leverOf(foot)) return undefined;
  return issue('#NUM!', 'lift-past-ball', {
    parameter: 'lift',
    received: lift,
    unit: 'cm',
    details: { lever: leverOf(foot), foot },
  });
}

/** The issue of a shank at the horizontal or past it, or undefined. */
export function shankTooFlat(ankle: number, pitch: number): Issue | undefined {
  if (ankle + pitch < 90) return undefined;
  return issue('#NUM!', 'shank-level', { details: { shank: ankle + pitch, ankle, pitch } });
}

/** Why `leanOf` found nothing for these figures. Only called when it did not. */
export function whyNoPosture(
  balance: Balance,
  femur: number,
  tibia: number,
  trunk: number,
  ankle: number,
  lift: number,
  depth: number,
  foot: number,
  stance: number,
): Issue {
  const high = liftTooHigh(lift, foot);
  if (high) return high;
  const pitch = pitchOf(lift, foot);
  const flat = shankTooFlat(ankle, pitch);
  if (flat) return flat;
  const leg = newLeg();
  setLeg(leg, femur, tibia, foot, pitch, ankle + pitch, depth, stance);
  const asked = demand(balance, leg, trunk) / balance.weight;
  const most = (balance.reach * trunk) / balance.weight;
  if (Math.abs(asked) <= most)
    return issue('#NUM!', 'lean-past-level', { details: { lean: asin(asked / most) - balance.tilt } });
  return issue('#NUM!', asked > 0 ? 'hip-too-far-behind' : 'hip-too-far-ahead', {
    details: { asked: Math.abs(asked), most, hip: Math.abs(leg.hip) },
  });
}

/** Why the descent does not begin: nothing within the limits at 60° above parallel. */
export const whyNoDescent = (
  lift: number,
  foot: number,
  maxLean: number,
  maxHip: number,
  maxKnee: number,
): Issue =>
  liftTooHigh(lift, foot) ??
  issue('#NUM!', 'nothing-at-60', { details: { max_lean: maxLean, max_hip: maxHip, max_knee: maxKnee } });
