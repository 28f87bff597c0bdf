import type { Constant } from '../core/source.ts';
import {
  aboveLumbarCentre,
  aboveLumbarMass,
  hatCentre,
  hatMass,
  lumbarAlong,
  thighCentre,
  thighMass,
} from './dempster.ts';
import { gravity } from './gravity.ts';
import { carryOf } from './placements.ts';

const bars: readonly Constant[] = (['high-bar', 'low-bar', 'front'] as const).flatMap(
  (word) => carryOf(word).constants,
);
const armsTaken: readonly Constant[] = [
  ...new Set((['goblet', 'arms-forward'] as const).flatMap((word) => carryOf(word).constants)),
];

/** Constants of the hip's moment. */
export const hipConstants: readonly Constant[] = [gravity, hatMass, hatCentre, ...bars, ...armsTaken];
/** Constants of the knee's moment. */
export const kneeConstants: readonly Constant[] = [...hipConstants, thighMass, thighCentre];
/** Constants of the back's moment. */
export const backConstants: readonly Constant[] = [
  gravity,
  aboveLumbarMass,
  aboveLumbarCentre,
  lumbarAlong,
  ...bars,
];
