import { fig, got, of, type Sentences } from './wording.ts';

/** Heel lifts and what they stand for. */
export const liftSentences: Sentences = {
  'no-equivalent': (i) =>
    `${of(i)} got ${got(i)}; no ${i.details?.what} on the flat gives the same lean with these lengths (${i.details?.why}). Compare with LIFT.AS.ANKLE or LIFT.CHANGE instead.`,
  'equivalent-out-of-bounds': (i) =>
    `${of(i)} got ${got(i)}; on the flat the same lean takes ${i.details?.what} of ${fig(i, 'value')}${i.details?.unit}; it accepts ${i.expected}${i.details?.unit}. Choose a smaller heel lift, or compare with LIFT.CHANGE.`,
  'lift-not-enough': (i) =>
    `${i.function} does not reach a "${i.parameter}" of ${got(i)} with a heel lift up to ${fig(i, 'highest')} cm (${i.details?.limit}); at that lift ${i.details?.at}. ${i.remedy}`,
  'board-too-short': (i) =>
    `${of(i)} got ${got(i)}, less than the "rise" of ${fig(i, 'rise')} cm; it accepts the length along the slope. Check both.`,
  'stack-too-high': (i) =>
    `${of(i)} got ${got(i)}; with the shoe the foot is pitched by ${fig(i, 'pitch')} deg and the heel raised by ${fig(i, 'lift')} cm; it accepts up to ${fig(i, 'most')} cm and less than 90 deg. Lower the wedge or the drop.`,
  'no-lift-on-hand': (i) =>
    `${of(i)} got ${got(i)}, and the highest available height is ${i.details?.highest}; it accepts at most that. Add a higher one to "range", or ask for less.`,
};
