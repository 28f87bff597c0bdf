import { type Issue, isIssue } from '../core/issue.ts';
import { defaultFoot } from '../tables/foot.ts';
import { carryOf } from '../tables/placements.ts';
import { cos, sin } from './angle.ts';
import { type BarRulePlacement, barRule, demand, FEET, given } from './balance.ts';
import { hipFlexion, kneeFlexion } from './flexion.ts';
import { barRuleLean } from './lean.ts';
import { ankleAboveFloor, balanceFromHeel, leverOf, newLeg, pitchOf, setLeg } from './leg.ts';

/** A point in the side view, cm: +x forward, +y up, origin on the floor under mid-foot. */
export type Point = readonly [x: number, y: number];

/** One lifter in one set-up. Lengths and lift cm, angles deg. */
export interface Lifter {
  readonly femur: number;
  readonly tibia: number;
  readonly trunk: number;
  readonly ankle: number;
  readonly lift?: number;
  readonly depth?: number;
  readonly placement?: BarRulePlacement;
  readonly foot?: number | undefined;
  readonly stance?: number;
}

/** Everything a drawing of the posture needs. */
export interface FigurePoints {
  readonly heel: Point;
  readonly ball: Point;
  readonly toe: Point;
  readonly ankle: Point;
  readonly knee: Point;
  readonly hip: Point;
  readonly shoulder: Point;
  /** What stands over mid-foot: the bar, or with arms forward the whole body's centre of mass. */
  readonly bar: Point;
  readonly balanced: 'bar' | 'centre of mass';
  /** Heel to toe, cm; from the lengths where it was not measured. */
  readonly footLength: number;
  readonly lean: number;
  readonly shank: number;
  readonly pitch: number;
  readonly kneeFlexion: number;
  readonly hipFlexion: number;
  readonly lift: number;
  readonly depth: number;
}

/**
 * The posture of the bar rule, point by point; an issue when none holds. Values are taken as they come: whoever calls
 * keeps the functions' bounds.
 */
export function figureOf(lifter: Lifter): FigurePoints | Issue {
  const { femur, tibia, trunk, ankle, lift = 0, depth = 0, placement = 'high-bar', stance = 0 } = lifter;
  const foot = lifter.foot ?? defaultFoot(femur, tibia, trunk);
  const lean = barRuleLean(femur, tibia, trunk, ankle, lift, depth, placement, foot, stance);
  return isIssue(lean) ? lean : figureWith(lifter, lean);
}

/** The lifter at a lean that is given, deg, balanced or not: the bar stands where that lean puts it. */
export function figureWith(lifter: Lifter, lean: number): FigurePoints {
  const { femur, tibia, trunk, ankle, lift = 0, depth = 0, placement = 'high-bar', stance = 0 } = lifter;
  const foot = lifter.foot ?? defaultFoot(femur, tibia, trunk);
  const pitch = pitchOf(lift, foot);
  const shank = ankle + pitch;
  const leg = newLeg();
  setLeg(leg, femur, tibia, foot, pitch, shank, depth, stance);
  const turn = cos(stance);
  const middle = balanceFromHeel(foot, pitch);
  const lever = leverOf(foot);
  const ankleY = ankleAboveFloor(foot, pitch);
  const kneeY = ankleY + tibia * cos(shank);
  const hipY = kneeY + femur * sin(depth);
  const shoulder: Point = [leg.hip + trunk * sin(lean), hipY + trunk * cos(lean)];
  const carry = carryOf(placement);
  const balance = barRule(placement);
  const bar: Point =
    placement === 'arms-forward'
      ? [
          (given(balance, trunk, lean) - demand(balance, leg, trunk)) / balance.weight,
          // the feet's own centre of mass taken half way up to the ankle: it only moves the drawn point
          (balance.ankle + FEET / 2) * ankleY +
            balance.knee * kneeY +
            balance.hip * hipY +
            trunk * carry.upperSin * cos(lean),
        ]
      : [
          leg.hip + trunk * (carry.along * sin(lean) + carry.ahead * cos(lean)),
          hipY + trunk * (carry.along * cos(lean) - carry.ahead * sin(lean)),
        ];
  return {
    heel: [(lever - lever * cos(pitch) - middle) * turn, lift],
    ball: [(lever - middle) * turn, 0],
    toe: [(foot - middle) * turn, 0],
    ankle: [leg.ankle, ankleY],
    knee: [leg.knee, kneeY],
    hip: [leg.hip, hipY],
    shoulder,
    bar,
    balanced: placement === 'arms-forward' ? 'centre of mass' : 'bar',
    footLength: foot,
    lean,
    shank,
    pitch,
    kneeFlexion: kneeFlexion(shank, depth),
    hipFlexion: hipFlexion(lean, depth, stance),
    lift,
    depth,
  };
}
