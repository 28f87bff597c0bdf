import { asin } from '../core/elementary/arc.ts';
import { cos, RAD, sin } from './angle.ts';
import { type Balance, demandShare, leanThatBalances } from './balance.ts';
import { hipFlexion } from './flexion.ts';
import { newLeg, pitchOf, setLeg } from './leg.ts';
import { firstAbove, firstBelow } from './wave.ts';

/** Where the descent begins and where it is taken as whole, deg. */
const HIGHEST = 60;
export const LOWEST = -45;

const leg = newLeg();

/**
 * LEAN.DEEPEST: going down from 60°, the last depth (deg) at which a posture keeps lean ≤ maxLean, hip flexion ≤ maxHip
 * and a shank that both ankle and knee allow; −45 when nothing ends the descent, NaN when nothing holds at 60°.
 *
 * The descent has two stretches: the ankle holds the shank, then the knee does. On each the demand on the trunk is a
 * plain wave in the depth, mean + c cos d + s sin d, so its first crossing of a limit is found in closed form and no
 * narrow failure is stepped over.
 */
export function deepestOf(
  balance: Balance,
  femur: number,
  tibia: number,
  trunk: number,
  ankle: number,
  lift: number,
  foot: number,
  stance: number,
  maxLean: number,
  maxHip: number,
  maxKnee: number,
): number {
  const pitch = pitchOf(lift, foot);
  const range = ankle + pitch;
  const knee = maxKnee - 90;
  const shank = Math.min(range, knee + HIGHEST);
  if (!(shank < 90)) return Number.NaN;
  setLeg(leg, femur, tibia, foot, pitch, shank, HIGHEST, stance);
  const lean = leanThatBalances(balance, demandShare(balance, leg, trunk));
  if (!(lean <= maxLean && hipFlexion(lean, HIGHEST, stance) <= maxHip)) return Number.NaN;

  // demand over reach = mean + c cos d + s sin d
  const scale = 1 / (balance.reach * trunk);
  const turn = cos(stance) * scale;
  const still = -(
    (balance.ankle + balance.knee + balance.hip) * leg.ankle * scale +
    balance.trunk * trunk * scale
  );
  const shin = (balance.knee + balance.hip) * tibia * turn;
  const thigh = balance.hip * femur * turn;
  const limits: Limits = { balance, stance, maxLean: Math.min(maxLean, 90), maxHip };

  const change = Math.max(LOWEST, Math.min(HIGHEST, range - knee));
  if (change < HIGHEST) {
    const end = firstFailure(limits, still - shin * sin(range), thigh, 0, HIGHEST, change);
    if (end >= change) return end;
  }
  if (change === LOWEST) return LOWEST;
  const end = firstFailure(limits, still, thigh - shin * sin(knee), -shin * cos(knee), change, LOWEST);
  return Math.max(end, LOWEST);
}

interface Limits {
  readonly balance: Balance;
  readonly stance: number;
  readonly maxLean: number;
  readonly maxHip: number;
}

/** First depth from `from` down to `to` at which the wave of demand breaks a limit; −∞ when none does. */
function firstFailure(limits: Limits, mean: number, c: number, s: number, from: number, to: number): number {
  const { balance, stance, maxLean, maxHip } = limits;
  const turned = maxLean + balance.tilt;
  const most = turned < 90 ? sin(turned) : 1;
  const end = Math.max(firstAbove(mean, c, s, most, from, to), firstBelow(mean, c, s, -1, from, to));
  if (maxHip >= 180) return end;
  const lowest = Math.max(end, to);
  const straight = hipFailure(balance, maxHip, mean, c, s, from, lowest);
  if (stance === 0) return Math.max(end, straight);
  // Turned out, a lean of 0 or more flexes the hip less than straight ahead, and one below 0 to 90 − depth at most:
  // above both depths nothing can fail.
  const start = maxHip < 90 ? from : Math.min(from, Math.max(straight, 90 - maxHip));
  return start < lowest ? end : Math.max(end, hipFailureTurnedOut(limits, mean, c, s, start, lowest));
}

/**
 * With feet straight ahead the hip's limit is lean ≤ maxHip − 90 + depth, so the demand must keep below
 * sin(maxHip − 90 + depth + tilt): the difference of the two is a wave again.
 */
function hipFailure(
  balance: Balance,
  maxHip: number,
  mean: number,
  c: number,
  s: number,
  from: number,
  to: number,
): number {
  const turned = maxHip - 90 + balance.tilt;
  // above this depth the limit lies beyond what any posture can have
  const start = Math.min(from, 90 - turned);
  if (start < to) return Number.NEGATIVE_INFINITY;
  return firstAbove(mean, c - sin(turned), s - cos(turned), 0, start, to);
}

const STEP = 1.5;

/** With feet turned out there is no closed form: steps of 1.5°, and a look between them where the flexion peaks. */
function hipFailureTurnedOut(
  { balance, stance, maxHip }: Limits,
  mean: number,
  c: number,
  s: number,
  from: number,
  to: number,
): number {
  const over = (depth: number): number => {
    const demand = mean + c * cos(depth) + s * sin(depth);
    const lean = asin(Math.max(-1, Math.min(1, demand))) / RAD - balance.tilt;
    return hipFlexion(lean, depth, stance) - maxHip;
  };
  let before = from;
  let here = from;
  let overBefore = Number.NEGATIVE_INFINITY;
  let overHere = over(from);
  // Nothing fails above, so the descent ends where it already fails: there may be no more than a last digit to it.
  if (overHere > 0) return from;
  while (here > to) {
    const next = Math.max(to, here - STEP);
    const overNext = over(next);
    if (overHere <= 0 && overHere >= overBefore && overHere >= overNext) {
      const peak = highest(over, next, before);
      if (over(peak) > 0) return crossing(over, peak, before);
    }
    if (overNext > 0) return crossing(over, next, here);
    before = here;
    here = next;
    overBefore = overHere;
    overHere = overNext;
  }
  const peak = overHere >= overBefore ? highest(over, to, before) : to;
  return over(peak) > 0 ? crossing(over, peak, before) : Number.NEGATIVE_INFINITY;
}

/** Between a depth that fails and one above it that holds: false position, the end that stays weighed down. */
function crossing(over: (depth: number) => number, fails: number, holds: number): number {
  let low = fails;
  let high = holds;
  let above = over(low);
  let below = over(high);
  let stayed = 0;
  for (let i = 0; i < 60 && high - low > 1e-9; i++) {
    const middle = below === 0 ? (low + high) / 2 : high - (below * (high - low)) / (below - above);
    const value = over(middle);
    if (value > 0) {
      low = middle;
      above = value;
      if (stayed === 1) below /= 2;
      stayed = 1;
    } else {
      high = middle;
      below = value;
      if (stayed === -1) above /= 2;
      stayed = -1;
    }
  }
  return high;
}

/** The place of the one peak between two depths, by thirds. */
function highest(over: (depth: number) => number, from: number, to: number): number {
  let low = from;
  let high = to;
  while (high - low > 1e-6) {
    const third = (high - low) / 3;
    if (over(low + third) < over(high - third)) low += third;
    else high -= third;
  }
  return (low + high) / 2;
}
