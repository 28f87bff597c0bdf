import { type Issue, issue } from '../core/issue.ts';
import { carryOf, type Placement } from '../tables/placements.ts';
import { type Balance, demand, given, newBalance, setBalance } from './balance.ts';
import { type Leg, newLeg, pitchOf, setLeg } from './leg.ts';
import { liftTooHigh } from './why.ts';

/** A posture as it was seen, balanced or not: its joints, what weighs, and where. */
export interface Seen {
  readonly balance: Balance;
  readonly leg: Leg;
  readonly pitch: number;
  /** Sum of all masses × their distance ahead of mid-foot, kg·cm; the feet are there and add nothing. */
  readonly turning: number;
}

// filled and read within one call
const seen = { balance: newBalance(), leg: newLeg(), pitch: 0.5, turning: 0.5 };

/** The masses of a posture with this lean and shin angle, kg, cm, deg; the issue of one that is none. */
export function postureSeen(
  lean: number,
  shank: number,
  mass: number,
  bar: number,
  femur: number,
  tibia: number,
  trunk: number,
  foot: number,
  lift: number,
  depth: number,
  placement: Placement,
  stance: number,
): Seen | Issue {
  const pitch = pitchOf(lift, foot);
  if (Number.isNaN(pitch)) return liftTooHigh(lift, foot)!;
  if (shank === 90) return issue('#NUM!', 'shank-level', { details: { shank, ankle: 90 - pitch, pitch } });
  setBalance(seen.balance, carryOf(placement), mass, bar);
  setLeg(seen.leg, femur, tibia, foot, pitch, shank, depth, stance);
  seen.pitch = pitch;
  seen.turning = given(seen.balance, trunk, lean) - demand(seen.balance, seen.leg, trunk);
  return seen;
}
