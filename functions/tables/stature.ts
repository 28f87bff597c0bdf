import { constant, secondary } from '../core/source.ts';

const drillis = secondary(
  'Drillis & Contini 1966, NYU TR 1166-03, as printed in Winter, Biomechanics and Motor Control of Human Movement, Fig. 4.1',
);
const height = (name: string, value: number) => constant(name, value, 'of stature', drillis);

/** Height of the ankle joint standing, and the length of the foot, as fractions of stature. */
export const ankleHeightShare = height('ankle height', 0.039);
export const footShare = height('foot length', 0.152);

/** Segment lengths, from the heights of the joints standing: knee .285, hip .530, shoulder .818. */
export const tibiaShare = height('shank: knee less ankle height', 0.246);
export const femurShare = height('thigh: hip less knee height', 0.245);
export const trunkShare = height('trunk: shoulder less hip height', 0.288);

/** Femur, tibia and trunk together, the stretch from ankle to shoulder: .246 + .245 + .288. */
export const anklesToShoulders = constant('ankle to shoulder', 0.779, 'of stature', drillis);
