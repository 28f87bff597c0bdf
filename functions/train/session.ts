import { defineFunction } from '../core/define.ts';
import { number } from '../core/parameter.ts';
import { published } from '../core/source.ts';

/** TRAIN.SESSION(rpe, minutes): session load, a plain number. @throws nothing. */
export default defineFunction({
  name: 'TRAIN.SESSION',
  family: 'training log',
  summary: 'Session load: rating of perceived exertion times minutes.',
  searchWords: ['sRPE', 'session RPE', 'internal load', 'Foster', 'arbitrary units', 'training load'],
  parameters: [
    number('rpe', '', 'rating of the whole session, 0 to 10', {
      bounds: { min: 0, max: 10, because: 'The session scale goes from 0 (rest) to 10.' },
    }),
    number('minutes', 'min', 'length of the session', {
      bounds: { min: 0, max: 1440, because: 'A day has 1440 minutes.' },
    }),
  ],
  result: { is: 'number', unit: '', about: 'session load, in units of rating × minutes' },
  rule: 'rpe × minutes',
  sources: [published('Foster et al. 2001, J Strength Cond Res 15:109–115')],
  notes: [
    'Ask for one rating of the whole session, about half an hour after it. STRENGTH.RIR takes another rating: that of one set.',
  ],
  examples: [
    { formula: '=TRAIN.SESSION(6, 60)', gives: 360 },
    { formula: '=TRAIN.SESSION(0, 45)', gives: 0 },
  ],
  seeAlso: ['TRAIN.VOLUME', 'TRAIN.SUM', 'TRAIN.MONOTONY'],
  typical: [6, 60],
  directions: { rpe: 1, minutes: 1 },
  compute: (rpe, minutes) => rpe * minutes,
});
