import type { Step } from '../core/define.ts';
import {
  ankleAboveSole,
  ankleAlongFoot,
  balanceAlongFoot,
  ballAlongFoot,
  defaultFoot,
  footOfLengths,
} from '../tables/foot.ts';
import { carryOf, type Placement } from '../tables/placements.ts';
import { type Balance, demand, demandShare, leanThatBalances } from './balance.ts';
import { kneeFlexion } from './flexion.ts';
import { leverOf, newLeg, pitchOf, setLeg } from './leg.ts';

/** A step with what is seldom said left out. */
export const step = (
  name: string,
  symbol: string,
  rule: string,
  value: number | string,
  unit: Step['unit'],
  constants: Step['constants'] = [],
): Step => ({ name, symbol, rule, value, unit, ...(constants.length ? { constants } : {}) });

/** The default foot, told; nothing when the foot was measured. */
export const footSteps = (femur: number, tibia: number, trunk: number, foot: number | undefined): Step[] =>
  foot === undefined
    ? [
        step(
          'Foot length, not measured',
          'L',
          '.152/.779 × (femur + tibia + trunk)',
          defaultFoot(femur, tibia, trunk),
          'cm',
          [footOfLengths],
        ),
      ]
    : [];

/** Lever and pitch of a lift; nothing without one. */
export const pitchSteps = (lift: number, foot: number): Step[] =>
  lift === 0
    ? []
    : [
        step('Heel to ball', 'b', '.740 L', leverOf(foot), 'cm', [ballAlongFoot]),
        step('Pitch of the lifted foot', 'φ', 'asin(lift / b)', shown(pitchOf(lift, foot)), 'deg'),
      ];

/** A figure of the working; where there is none the working says so. */
export const shown = (value: number, without = 'no posture'): number | string =>
  Number.isNaN(value) ? without : value;

/** Where the joints stand, from foot to hip. */
export function legSteps(
  femur: number,
  tibia: number,
  ankle: number,
  lift: number,
  depth: number,
  foot: number,
  stance: number,
): Step[] {
  const pitch = pitchOf(lift, foot);
  const leg = newLeg();
  setLeg(leg, femur, tibia, foot, pitch, ankle + pitch, depth, stance);
  const turned = stance === 0 ? '' : ' × cos stance';
  return [
    ...pitchSteps(lift, foot),
    step(
      'Shin angle from the vertical',
      'σ',
      lift === 0 ? 'ankle' : 'ankle + φ',
      shown(ankle + pitch),
      'deg',
    ),
    step(
      'Ankle joint ahead of mid-foot',
      'x_A − x_B',
      lift === 0 ? `(.25 − .50) L${turned}` : `((.25 − .50) L cosφ + (.039/.152) L sinφ)${turned}`,
      shown(leg.ankle),
      'cm',
      [ankleAlongFoot, balanceAlongFoot, ankleAboveSole],
    ),
    step('Knee ahead of mid-foot', 'x_K', `x_A − x_B + tibia sinσ${turned}`, shown(leg.knee), 'cm'),
    step('Hip ahead of mid-foot', 'x_H', `x_K − femur cos depth${turned}`, shown(leg.hip), 'cm'),
  ];
}

/** The working of a lean: the leg, what the trunk has to balance, and the lean that does. */
export function leanSteps(
  balance: Balance,
  femur: number,
  tibia: number,
  trunk: number,
  ankle: number,
  lift: number,
  depth: number,
  placement: Placement,
  foot: number | undefined,
  stance: number,
): Step[] {
  const length = foot ?? defaultFoot(femur, tibia, trunk);
  const pitch = pitchOf(lift, length);
  const leg = newLeg();
  setLeg(leg, femur, tibia, length, pitch, ankle + pitch, depth, stance);
  const barOnly = balance.ankle === 0;
  const lean = ankle + pitch < 90 ? leanThatBalances(balance, demandShare(balance, leg, trunk)) : Number.NaN;
  return [
    ...footSteps(femur, tibia, trunk, foot),
    ...legSteps(femur, tibia, ankle, lift, depth, length, stance),
    kneeStep(ankle + pitch, depth),
    ...conditionSteps(balance, trunk, placement, barOnly),
    step(
      'What the trunk has to balance',
      'D',
      barOnly ? '−x_H' : '−(sum of the masses × their distance ahead of mid-foot) / all mass',
      shown(demand(balance, leg, trunk) / balance.weight),
      'cm',
    ),
    step('Trunk lean from the vertical', 'β', 'asin(D / √(A² + C²)) − atan2(C, A)', shown(lean), 'deg'),
  ];
}

/** Most knees bend no further, deg: deeper positions are not reached with the whole ankle range used. */
const MOST_KNEE = 155;

function kneeStep(shank: number, depth: number): Step {
  const flexion = kneeFlexion(shank, depth);
  const name = flexion > MOST_KNEE ? 'Knee flexion, more than most knees have' : 'Knee flexion';
  return step(name, 'knee', '90 + σ − depth', shown(flexion), 'deg');
}

function conditionSteps(balance: Balance, trunk: number, placement: Placement, barOnly: boolean): Step[] {
  const { constants } = carryOf(placement);
  const per = balance.weight;
  return [
    step(
      barOnly ? 'Bar along the trunk' : 'Trunk’s share in A sinβ + C cosβ = D',
      'A',
      barOnly ? 'along × trunk' : 'masses × their places along the trunk / all mass',
      (balance.sin * trunk) / per,
      'cm',
      constants,
    ),
    step(
      barOnly ? 'Bar ahead of the trunk line' : 'Share ahead of the trunk line',
      'C',
      barOnly ? 'ahead × trunk' : 'masses × their places ahead of the trunk line / all mass',
      (balance.cos * trunk) / per,
      'cm',
    ),
  ];
}
