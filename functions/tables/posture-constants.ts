import type { Constant } from '../core/source.ts';
import {
  armMass,
  footMass,
  hatCentre,
  hatMass,
  levelArms,
  shankCentre,
  shankMass,
  thighCentre,
  thighMass,
  trunkHeadCentre,
  trunkHeadMass,
} from './dempster.ts';
import { ankleAboveSole, ankleAlongFoot, balanceAlongFoot, ballAlongFoot, footOfLengths } from './foot.ts';
import { carryOf } from './placements.ts';

const footConstants: readonly Constant[] = [
  ballAlongFoot,
  ankleAlongFoot,
  ankleAboveSole,
  balanceAlongFoot,
  footOfLengths,
];

/** Constants of the bar rule; with arms forward the body's masses enter. */
export const postureConstants: readonly Constant[] = [
  ...footConstants,
  ...carryOf('high-bar').constants,
  ...carryOf('low-bar').constants,
  ...carryOf('front').constants,
  footMass,
  shankMass,
  shankCentre,
  thighMass,
  thighCentre,
  hatMass,
  trunkHeadMass,
  trunkHeadCentre,
  armMass,
  levelArms,
];

/** Constants of the system rule. */
export const systemConstants: readonly Constant[] = [
  ...postureConstants,
  hatCentre,
  ...carryOf('goblet').constants.filter((c) => !postureConstants.includes(c)),
];
