import type { Step } from '../core/define.ts';
import { assumption, type Constant, constant, secondary } from '../core/source.ts';
import { ankleAlongFoot } from '../tables/foot.ts';
import { footShare, tibiaShare } from '../tables/stature.ts';
import { step } from './steps.ts';

/** From the knee's axis to what touches the wall. */
const kneeToFront = constant('knee’s axis to its front', 5, 'cm', assumption('this project’s choice'));
const footOfTibia = constant(
  'foot length',
  footShare.value / tibiaShare.value,
  'of tibia length',
  secondary('Drillis & Contini 1966 in Winter Fig. 4.1: .152 over .246 of stature'),
);

export const wallConstants: readonly Constant[] = [ankleAlongFoot, kneeToFront, footOfTibia];

const footAtWall = (tibia: number, foot: number | undefined): number => foot ?? footOfTibia.value * tibia;

/** Toe tip ahead of the ankle joint less the knee's front, cm: what is added to the distance from the wall. */
const wallOffset = (tibia: number, foot: number | undefined): number =>
  (1 - ankleAlongFoot.value) * footAtWall(tibia, foot) - kneeToFront.value;

/** Knee's axis ahead of the ankle joint, cm, when the knee touches a wall `distance` ahead of the toes. */
export const kneeAheadAtWall = (distance: number, tibia: number, foot: number | undefined): number =>
  distance + wallOffset(tibia, foot);

/** The inverse: toes to the wall, cm. */
export const wallDistance = (ahead: number, tibia: number, foot: number | undefined): number =>
  ahead - wallOffset(tibia, foot);

export const wallFootSteps = (tibia: number, foot: number | undefined): Step[] =>
  foot === undefined
    ? [
        step('Foot length, not measured', 'L', '.152/.246 × tibia', footAtWall(tibia, foot), 'cm', [
          footOfTibia,
        ]),
      ]
    : [];
