import { fig, of, type Sentences } from './wording.ts';

/** Moments and forces. */
export const loadSentences: Sentences = {
  'both-zero': (i) =>
    `${of(i)} and "${i.details?.other}" are both 0, and a share of nothing cannot be taken; it accepts moments of which one is above 0. Check the cells they refer to.`,
  'weight-without-arm': (i) =>
    `"${i.details?.missing}" of ${i.function} is blank, and "${i.details?.given}" is ${fig(i, 'value')}; each weight needs an arm. Fill it, or leave both out.`,
};
