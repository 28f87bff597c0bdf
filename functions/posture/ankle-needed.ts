import { type Issue, issue } from '../core/issue.ts';
import { defaultFoot } from '../tables/foot.ts';
import { rangeOfAnkle } from '../tables/parameters.ts';
import { asin, cos } from './angle.ts';
import { type BarRulePlacement, barRule } from './balance.ts';
import { kneeAheadFor } from './inverse.ts';
import { newLeg, pitchOf, setLeg } from './leg.ts';
import { liftTooHigh } from './why.ts';

const leg = newLeg();

/** Ankle range, deg, at which the bar rule gives a lean; the issue of why there is none. */
export function ankleFor(
  lean: number,
  femur: number,
  tibia: number,
  trunk: number,
  lift: number,
  depth: number,
  placement: BarRulePlacement,
  foot: number | undefined,
  stance: number,
): number | Issue {
  const balance = barRule(placement);
  const length = foot ?? defaultFoot(femur, tibia, trunk);
  const high = liftTooHigh(lift, length);
  if (high) return high;
  // past this lean the load comes back again: the rule answers with a smaller one
  const most = Math.min(90, 90 - balance.tilt);
  const asked = { parameter: 'lean', received: lean, unit: 'deg' } as const;
  if (lean > most) return issue('#NUM!', 'lean-beyond-placement', { ...asked, details: { most, placement } });
  const pitch = pitchOf(lift, length);
  setLeg(leg, femur, tibia, length, pitch, 0, depth, stance);
  const ahead = kneeAheadFor(balance, trunk, lean, leg.ankle, femur * cos(depth), cos(stance));
  const sine = ahead / tibia;
  if (!(Math.abs(sine) < 1))
    return issue('#NUM!', 'no-ankle-reaches', { ...asked, details: { ahead, tibia } });
  const ankle = asin(sine) - pitch;
  if (ankle >= rangeOfAnkle.min && ankle <= rangeOfAnkle.max) return ankle;
  return issue('#NUM!', 'ankle-out-of-bounds', { ...asked, details: { ankle, lean } });
}
