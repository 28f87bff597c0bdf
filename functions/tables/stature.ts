import { constant, secondary } from '../core/source.ts';

const drillis = secondary(
  'Drillis & Contini 1966, NYU TR 1166-03, as printed in Winter, Biomechanics and Motor Control of Human Movement, Fig. 4.1',
);
const height = (name: string, value: number) => constant(name, value, 'of stature', drillis);

/** Heights of the joints standing, and the length of the foot, as fractions of stature. */
export const ankleHeightShare = height('ankle height', 0.039);
export const kneeHeightShare = height('knee height', 0.285);
export const hipHeightShare = height('hip height', 0.53);
export const shoulderHeightShare = height('shoulder height', 0.818);
export const footShare = height('foot length', 0.152);

/** Segment lengths that follow from those heights. */
export const tibiaShare = height('shank: knee less ankle height', 0.246);
export const femurShare = height('thigh: hip less knee height', 0.245);
export const trunkShare = height('trunk: shoulder less hip height', 0.288);

/** Femur, tibia and trunk together, the stretch from ankle to shoulder: .246 + .245 + .288. */
export const anklesToShoulders = constant('ankle to shoulder', 0.779, 'of stature', drillis);
