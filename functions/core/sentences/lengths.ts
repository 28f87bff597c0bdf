import { boundsInWords } from '../parameter.ts';
import { fig, got, of, type Sentences } from './wording.ts';

const bounds = (min: unknown, max: unknown): string => boundsInWords({ min: Number(min), max: Number(max) });

/** Segments, tables and the ankle. */
export const lengthSentences: Sentences = {
  'length-out-of-bounds': (i) =>
    `${of(i)} less "${i.details?.lower}" comes to ${fig(i, 'length')} cm (${fig(i, 'upper_height')} less ${fig(i, 'lower_height')}); a ${i.details?.segment} is ${bounds(i.details?.min, i.details?.max)} cm. Check both heights and their unit.`,
  'segment-of-other-table': (i) =>
    `${of(i)} got ${got(i)}, which table "${i.details?.table}" does not have; it accepts ${i.expected}. Choose one of these, or the other table.`,
  'no-centre-of-mass': (i) =>
    `${of(i)} got ${got(i)}, for which table "${i.details?.table}" gives no centre of mass; it accepts ${i.expected}. Choose one of these, or the other table.`,
  'wall-too-far': (i) =>
    `${of(i)} got ${got(i)}: the knee would be ${fig(i, 'ahead')} cm ahead of the ankle on a tibia of ${fig(i, 'tibia')} cm; it accepts less than the tibia. Check distance, tibia and foot.`,
  'wall-angle-out-of-bounds': (i) =>
    `${of(i)} got ${got(i)}, which comes to ${fig(i, 'angle')} deg of ankle range; it accepts distances that give -10 to 70 deg. Check distance, tibia and foot.`,
  'ankle-out-of-bounds': (i) =>
    `${i.function} comes to ${fig(i, 'ankle')} deg of ankle range for a "lean" of ${fig(i, 'lean')} deg; it accepts -10 to 70. Choose another lean, lift or depth.`,
  'no-ankle-reaches': (i) =>
    `${of(i)} got ${got(i)}; no ankle range gives it: the knee would have to be ${fig(i, 'ahead')} cm ahead of the ankle on a tibia of ${fig(i, 'tibia')} cm. Choose another lean, lift or depth.`,
  'lean-beyond-placement': (i) =>
    `${of(i)} got ${got(i)}; with the bar carried "${i.details?.placement}" a balanced lean is at most ${fig(i, 'most')} deg. Use a lower lean or another placement.`,
};
