import { asin, atan2 } from '../core/elementary/arc.ts';
import { footMass, hatMass, shankCentre, shankMass, thighCentre, thighMass } from '../tables/dempster.ts';
import { type Carry, carryOf, type Placement } from '../tables/placements.ts';
import { cos, RAD, sin } from './angle.ts';
import type { Leg } from './leg.ts';

/**
 * The one condition of balance, A sinβ + C cosβ = D, for a trunk of length T:
 * A = sin·T, C = cos·T, D = −(ankle·x_ankle + knee·x_knee + hip·x_hip + trunk·T).
 * What weighs what differs with the rule: the bar alone over mid-foot, or body and bar together. The feet stand over
 * mid-foot and ask for nothing.
 */
export interface Balance {
  sin: number;
  cos: number;
  ankle: number;
  knee: number;
  hip: number;
  trunk: number;
  /** √(A² + C²) / T, the most that the trunk can balance. */
  reach: number;
  /** atan2(C, A), deg: how far the line from hip to load is ahead of the trunk line. */
  tilt: number;
  /** Everything that weighs: body and bar. */
  weight: number;
}

export const newBalance = (): Balance => ({
  sin: 0.5,
  cos: 0.5,
  ankle: 0.5,
  knee: 0.5,
  hip: 0.5,
  trunk: 0.5,
  reach: 0.5,
  tilt: 0.5,
  weight: 0.5,
});

const SHANKS = 2 * shankMass.value;
const THIGHS = 2 * thighMass.value;
// a leg segment's centre of mass divides its mass between its two joints
const ANKLE = SHANKS * shankCentre.value;
const KNEE = SHANKS * (1 - shankCentre.value) + THIGHS * thighCentre.value;
const HIP = THIGHS * (1 - thighCentre.value) + hatMass.value;

/** The system rule: body mass and bar mass, any unit, over mid-foot together. Writes into `out`. */
export function setBalance(out: Balance, carry: Carry, body: number, bar: number): Balance {
  out.sin = body * carry.upperSin + bar * carry.along;
  out.cos = body * carry.upperCos + bar * carry.ahead;
  out.ankle = body * ANKLE;
  out.knee = body * KNEE;
  out.hip = body * HIP + bar;
  out.trunk = body * carry.upperLevel;
  out.reach = Math.sqrt(out.sin * out.sin + out.cos * out.cos);
  out.tilt = atan2(out.cos, out.sin) / RAD;
  out.weight = body + bar;
  return out;
}

/** Mass of the feet, which the condition leaves out since they stand over mid-foot. */
export const FEET = 2 * footMass.value;

// The bar rule is the system rule of a body that weighs nothing; without a bar the body alone is balanced.
const ruled = (word: Placement, body: number, bar: number): Balance =>
  setBalance(newBalance(), carryOf(word), body, bar);
const highBar = ruled('high-bar', 0, 1);
const lowBar = ruled('low-bar', 0, 1);
const front = ruled('front', 0, 1);
const armsForward = ruled('arms-forward', 1, 0);

/** Placements that the bar rule answers for. */
export type BarRulePlacement = Exclude<Placement, 'goblet'>;

/** The bar rule (bar over mid-foot); with arms forward and no bar, the body's own centre of mass over mid-foot. */
export function barRule(word: BarRulePlacement): Balance {
  switch (word) {
    case 'high-bar':
      return highBar;
    case 'low-bar':
      return lowBar;
    case 'front':
      return front;
    case 'arms-forward':
      return armsForward;
  }
}

/** D of the condition, in cm times weight: what the trunk has to balance. */
export const demand = (balance: Balance, leg: Leg, trunk: number): number =>
  -(balance.ankle * leg.ankle + balance.knee * leg.knee + balance.hip * leg.hip + balance.trunk * trunk);

/** D/√(A²+C²): beyond ±1 no lean balances. */
export const demandShare = (balance: Balance, leg: Leg, trunk: number): number =>
  demand(balance, leg, trunk) / (balance.reach * trunk);

/** The lean β, deg, that meets the condition: β = asin(D/√(A²+C²)) − atan2(C, A). NaN without one, or above 90°. */
export function leanThatBalances(balance: Balance, share: number): number {
  const lean = asin(share) / RAD - balance.tilt;
  return lean <= 90 ? lean : Number.NaN;
}

/** A sinβ + C cosβ of a lean, cm times weight. */
export const given = (balance: Balance, trunk: number, lean: number): number =>
  trunk * (balance.sin * sin(lean) + balance.cos * cos(lean));
