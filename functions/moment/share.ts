import { defineFunction } from '../core/define.ts';
import { issue } from '../core/issue.ts';
import { number } from '../core/parameter.ts';
import { definition } from '../core/source.ts';
import * as say from '../tables/sources.ts';

const bounds = { min: 0, because: 'A share is taken of moments that both ask for extension.' };

/** MOMENT.SHARE(hip, knee): hip/(hip + knee), 0–1. @throws nothing; both 0 gives #DIV/0!. */
export default defineFunction({
  name: 'MOMENT.SHARE',
  family: 'moments',
  summary: 'The hips’ share of the moments at hip and knee.',
  searchWords: ['hip dominant', 'knee dominant', 'ratio', 'hip to knee'],
  parameters: [
    number('hip', 'N·m', 'moment at the hip', { bounds }),
    number('knee', 'N·m', 'moment at the knee', { bounds }),
  ],
  result: { is: 'number', unit: '', about: 'hip / (hip + knee), 0 to 1' },
  rule: 'hip / (hip + knee)',
  sources: [definition('share of a sum')],
  notes: [
    say.observedPosture,
    'Papers often print hip / knee: it is share / (1 − share). Wretenberg 1996 (MSSE 28:218) has 216 and 131 N·m, then 309 and 92: 1.65 and 3.36.',
  ],
  examples: [
    { formula: '=MOMENT.SHARE(216, 131)', gives: 0.622478, says: 'hip and knee as in Wretenberg 1996' },
    { formula: '=MOMENT.SHARE(309, 92)', gives: 0.770574 },
  ],
  seeAlso: ['MOMENT.HIP', 'MOMENT.KNEE'],
  typical: [216, 131],
  directions: { hip: 1, knee: -1 },
  compute: (hip, knee) =>
    hip === 0 && knee === 0
      ? issue('#DIV/0!', 'both-zero', { parameter: 'hip', received: 0, details: { other: 'knee' } })
      : hip / (hip + knee),
});
