import type { Step } from '../core/define.ts';
import { aboveLumbarCentre, aboveLumbarMass, lumbarAlong } from '../tables/dempster.ts';
import { gravity } from '../tables/gravity.ts';
import { carryOf, type Placement } from '../tables/placements.ts';
import { cos, sin } from './angle.ts';
import { backMoment, barAhead, hipMoment, kneeMoment, upperAhead, weightAbove } from './load.ts';
import { step } from './steps.ts';

const aheadSteps = (lean: number, trunk: number, bar: number, placement: Placement): Step[] => [
  step(
    'Upper body ahead of the hip, times its share of body mass',
    'U',
    'from trunk, lean and placement',
    upperAhead(placement, lean, trunk),
    'cm',
    carryOf(placement).constants,
  ),
  ...(bar > 0
    ? [
        step(
          'Bar ahead of the hip',
          'x_u',
          'along × trunk sinβ + ahead × trunk cosβ',
          barAhead(placement, lean, trunk),
          'cm',
        ),
      ]
    : []),
];

export const hipSteps = (
  lean: number,
  trunk: number,
  mass: number,
  bar: number,
  placement: Placement,
): Step[] => [
  ...aheadSteps(lean, trunk, bar, placement),
  step(
    'Moment at the hips',
    'M',
    'g [m U + B x_u], lengths in m',
    hipMoment(lean, trunk, mass, bar, placement),
    'N·m',
    [gravity],
  ),
];

export function kneeSteps(
  lean: number,
  femur: number,
  trunk: number,
  mass: number,
  bar: number,
  depth: number,
  placement: Placement,
  stance: number,
): Step[] {
  const ahead = femur * cos(depth) * cos(stance);
  return [
    step('Knee ahead of the hip', 'F_x', 'femur × cos depth × cos stance', ahead, 'cm'),
    ...aheadSteps(lean, trunk, bar, placement),
    step(
      'Moment at the knees',
      'M',
      'g [.200 m × .567 F_x + m (.678 F_x − U) + B (F_x − x_u)], lengths in m',
      kneeMoment(lean, ahead, trunk, mass, bar, placement),
      'N·m',
      [gravity],
    ),
  ];
}

export const backSteps = (
  lean: number,
  trunk: number,
  mass: number,
  bar: number,
  placement: Placement,
): Step[] => [
  step(
    'Upper body ahead of L4/L5',
    'x',
    '(.744 − .20) trunk sinβ',
    (aboveLumbarCentre.value - lumbarAlong.value) * trunk * sin(lean),
    'cm',
    [aboveLumbarMass, aboveLumbarCentre, lumbarAlong],
  ),
  step(
    'Bar ahead of L4/L5',
    'x_u',
    'bar ahead of the hip − .20 trunk sinβ',
    barAhead(placement, lean, trunk) - lumbarAlong.value * trunk * sin(lean),
    'cm',
    carryOf(placement).constants,
  ),
  step(
    'Moment about L4/L5',
    'M',
    'g [.536 m x + B x_u], lengths in m',
    backMoment(lean, trunk, mass, bar, placement),
    'N·m',
    [gravity],
  ),
];

export const muscleSteps = (
  lean: number,
  trunk: number,
  mass: number,
  bar: number,
  placement: Placement,
  lever: number,
): Step[] => [
  ...backSteps(lean, trunk, mass, bar, placement),
  step(
    'Pull of the back muscles',
    'F',
    'M / lever',
    (100 * backMoment(lean, trunk, mass, bar, placement)) / lever,
    'N',
  ),
];

export const weightStep = (mass: number, bar: number): Step =>
  step('Weight above L4/L5', 'W', 'g (.536 m + B)', weightAbove(mass, bar), 'N', [gravity, aboveLumbarMass]);
