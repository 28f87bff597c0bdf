import type { Issue } from './issue.ts';
import { argumentSentences } from './sentences/arguments.ts';
import { dataSentences } from './sentences/data.ts';
import { lengthSentences } from './sentences/lengths.ts';
import { liftSentences } from './sentences/lift.ts';
import { loadSentences } from './sentences/loads.ts';
import { photoSentences } from './sentences/photo.ts';
import { postureSentences } from './sentences/posture.ts';

/**
 * A sentence for each reason that a function can give: the argument, what arrived, what is accepted, what to do. Nobody
 * else words an error of a function. One file a subject in `sentences/`.
 */
export const functionSentences: Readonly<Record<string, (i: Issue) => string>> = {
  ...argumentSentences,
  ...photoSentences,
  ...postureSentences,
  ...lengthSentences,
  ...liftSentences,
  ...loadSentences,
  ...dataSentences,
};
