import { defineFunction } from '../core/define.ts';
import { issue } from '../core/issue.ts';
import { number } from '../core/parameter.ts';
import { published } from '../core/source.ts';

const zourdos = published('Zourdos et al. 2016, J Strength Cond Res 30:267–275');

/** STRENGTH.RIR(rpe): repetitions in reserve, 0–3. @throws nothing; no half step #NUM!, 1 to 6.5 #N/A. */
export default defineFunction({
  name: 'STRENGTH.RIR',
  family: 'strength',
  summary: 'Repetitions in reserve from a rating of perceived exertion of the resistance-training scale.',
  searchWords: ['RPE', 'rating of perceived exertion', 'reps in reserve', 'effort'],
  parameters: [
    number('rpe', '', 'rating of the set', {
      bounds: { min: 1, max: 10, because: 'The scale goes from 1 to 10.' },
    }),
  ],
  result: { is: 'number', unit: 'reps', about: 'repetitions in reserve' },
  rule: '10 − rpe for rpe 7 to 10 in half steps, but 0 at 9.5',
  sources: [zourdos],
  cautions: ['Ratings are judged, not measured: beginners and light sets are off by several repetitions.'],
  notes: [
    'Below 7 the scale is a band ("5–6: 4 to 6 in reserve", "1–4: little to no effort") and no count: those ratings give #N/A.',
    'At 9.5 no repetition was left, but a little more load would have been possible: 0.',
    'Half steps such as 8.5 ("1 to 2 in reserve") mean the middle, 1.5.',
  ],
  examples: [
    { formula: '=STRENGTH.RIR(8)', gives: 2 },
    { formula: '=STRENGTH.RIR(8.5)', gives: 1.5 },
    { formula: '=STRENGTH.RIR(9.5)', gives: 0 },
    { formula: '=STRENGTH.RIR(6)', gives: '#N/A', says: 'a band of effort, no count' },
  ],
  seeAlso: ['STRENGTH.MAX', 'STRENGTH.LOAD', 'TRAIN.SESSION'],
  typical: [8],
  compute: (rpe) => {
    if (!Number.isInteger(rpe * 2)) return issue('#NUM!', 'half-steps', { parameter: 'rpe', received: rpe });
    if (rpe < 7) return issue('#N/A', 'rpe-band', { parameter: 'rpe', received: rpe });
    return rpe === 9.5 ? 0 : 10 - rpe;
  },
});
