import { assumption, constant, practice, published, secondary } from '../core/source.ts';
import { ankleHeightShare, anklesToShoulders, footShare } from './stature.ts';

/** Where things lie along the foot, as shares of the foot's length counted from the heel. */
export const ankleAlongFoot = constant(
  'ankle joint ahead of the heel',
  0.25,
  'of foot length',
  assumption('a quarter of the foot lies behind the ankle joint; this project’s choice'),
);
export const ballAlongFoot = constant(
  'ball of the foot ahead of the heel',
  0.74,
  'of foot length',
  published(
    'Gordon et al. 2014, NATICK/TR-15/007: ball-of-foot length over foot length .7410 men, .7392 women',
  ),
);
export const heelContact = constant(
  'middle of the heel’s contact, ahead of the heel',
  0.12,
  'of foot length',
  assumption('where the heel presses on the floor; this project’s choice'),
);
export const balanceAlongFoot = constant(
  'balance point ahead of the heel',
  0.5,
  'of foot length',
  practice('the bar travels over mid-foot'),
);
export const ankleAboveSole = constant(
  'ankle joint above the sole',
  ankleHeightShare.value / footShare.value,
  'of foot length',
  secondary('Drillis & Contini 1966 in Winter Fig. 4.1: ankle height .039 over foot length .152 of stature'),
);

/** Foot length of somebody whose foot was not measured, as a share of femur + tibia + trunk. */
export const footOfLengths = constant(
  'foot length',
  footShare.value / anklesToShoulders.value,
  'of femur + tibia + trunk',
  secondary('Drillis & Contini 1966 in Winter Fig. 4.1: .152 over .779 of stature'),
);

/** Default foot length, cm, from the three lengths, cm. */
export const defaultFoot = (femur: number, tibia: number, trunk: number): number =>
  footOfLengths.value * (femur + tibia + trunk);
