import { ankleAboveSole, ankleAlongFoot, balanceAlongFoot, ballAlongFoot } from '../tables/foot.ts';
import { asin, cos, sin } from './angle.ts';

const BALL = ballAlongFoot.value;
const ANKLE = ankleAlongFoot.value;
const ANKLE_HEIGHT = ankleAboveSole.value;
const BALANCE = balanceAlongFoot.value;

/** Heel to ball, cm: the lever on which a heel lift turns the foot. */
export const leverOf = (foot: number): number => BALL * foot;

/** Heel pitch φ, deg, of a lift under the heel only. NaN when the lift is not less than the heel-to-ball length. */
export function pitchOf(lift: number, foot: number): number {
  if (lift === 0) return 0;
  const sine = lift / (BALL * foot);
  return sine < 1 ? asin(sine) : Number.NaN;
}

/** The ankle joint ahead of the flat heel, cm, at a pitch. */
export const ankleFromHeel = (foot: number, pitch: number): number =>
  BALL * foot + (ANKLE - BALL) * foot * cos(pitch) + ANKLE_HEIGHT * foot * sin(pitch);

/** The balance point (mid-foot) ahead of the flat heel, cm, at a pitch. */
export const balanceFromHeel = (foot: number, pitch: number): number =>
  BALL * foot + (BALANCE - BALL) * foot * cos(pitch);

/** The ankle joint above the floor, cm, at a pitch. */
export const ankleAboveFloor = (foot: number, pitch: number): number =>
  (BALL - ANKLE) * foot * sin(pitch) + ANKLE_HEIGHT * foot * cos(pitch);

/** How far each joint is ahead of mid-foot, cm, turned out with the toes. */
export interface Leg {
  ankle: number;
  knee: number;
  hip: number;
}

/** A leg to be filled by `setLeg`. */
export const newLeg = (): Leg => ({ ankle: 0.5, knee: 0.5, hip: 0.5 });

/**
 * Places the joints of a leg: lengths cm, angles deg, shank from the vertical, depth of the thigh above the horizontal.
 * Writes into a leg that is there already, because a column calls this a million times.
 */
export function setLeg(
  leg: Leg,
  femur: number,
  tibia: number,
  foot: number,
  pitch: number,
  shank: number,
  depth: number,
  stance: number,
): void {
  const turn = stance === 0 ? 1 : cos(stance);
  // ankle less balance point; flat the pitch terms fall away
  const ankle =
    pitch === 0
      ? (ANKLE - BALANCE) * foot
      : foot * ((ANKLE - BALANCE) * cos(pitch) + ANKLE_HEIGHT * sin(pitch));
  const knee = ankle + tibia * sin(shank);
  leg.ankle = ankle * turn;
  leg.knee = knee * turn;
  leg.hip = (knee - (depth === 0 ? femur : femur * cos(depth))) * turn;
}
