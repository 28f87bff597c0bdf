import {
  aboveLumbarCentre,
  aboveLumbarMass,
  hatMass,
  lumbarAlong,
  thighCentre,
  thighMass,
} from '../tables/dempster.ts';
import { gravity } from '../tables/gravity.ts';
import { carryOf, type Placement } from '../tables/placements.ts';
import { cos, sin } from './angle.ts';

const THIGHS = 2 * thighMass.value;
const HAT = hatMass.value;
const ABOVE = aboveLumbarMass.value;
const LUMBAR = lumbarAlong.value;
const ABOVE_LEVER = aboveLumbarCentre.value - LUMBAR;
const G = gravity.value;
const CM = 0.01;

/** How far the centre of head, arms and trunk is ahead of the hip, times their share of body mass, cm. */
export const upperAhead = (placement: Placement, lean: number, trunk: number): number => {
  const carry = carryOf(placement);
  return trunk * (carry.upperSin * sin(lean) + carry.upperCos * cos(lean) + carry.upperLevel);
};

/** How far the bar is ahead of the hip, cm. */
export const barAhead = (placement: Placement, lean: number, trunk: number): number => {
  const carry = carryOf(placement);
  return trunk * (carry.along * sin(lean) + carry.ahead * cos(lean));
};

/** Moment that the hips bear, both sides, N·m: masses kg, lengths cm, lean deg. */
export const hipMoment = (
  lean: number,
  trunk: number,
  mass: number,
  bar: number,
  placement: Placement,
): number => G * CM * (mass * upperAhead(placement, lean, trunk) + bar * barAhead(placement, lean, trunk));

/** Moment that the knees bear, both sides, N·m; `ahead` is how far the knee is ahead of the hip, cm. */
export const kneeMoment = (
  lean: number,
  ahead: number,
  trunk: number,
  mass: number,
  bar: number,
  placement: Placement,
): number =>
  G *
  CM *
  (THIGHS * mass * (1 - thighCentre.value) * ahead +
    mass * (HAT * ahead - upperAhead(placement, lean, trunk)) +
    bar * (ahead - barAhead(placement, lean, trunk)));

/** Moment about L4/L5, N·m. */
export const backMoment = (
  lean: number,
  trunk: number,
  mass: number,
  bar: number,
  placement: Placement,
): number => {
  const rise = trunk * sin(lean);
  return (
    G * CM * (ABOVE * mass * ABOVE_LEVER * rise + bar * (barAhead(placement, lean, trunk) - LUMBAR * rise))
  );
};

/** Weight above L4/L5, N. */
export const weightAbove = (mass: number, bar: number): number => G * (ABOVE * mass + bar);
