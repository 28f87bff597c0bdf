import { defineFunction } from '../core/define.ts';
import { numbersIn } from '../core/invoke.ts';
import { issue } from '../core/issue.ts';
import { range } from '../core/parameter.ts';
import { published } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { tooFew } from '../statistics/few.ts';
import { loadCaution } from '../tables/sources.ts';

/** STRENGTH.VELOCITY.LOSS(velocities): per cent. @throws nothing; fewer than 2 velocities #N/A, all 0 #DIV/0!. */
export default defineFunction({
  name: 'STRENGTH.VELOCITY.LOSS',
  family: 'strength',
  summary: 'Loss of bar velocity over a set: last repetition beside the fastest.',
  searchWords: ['velocity-based training', 'VBT', 'fatigue', 'velocity loss', 'stop a set'],
  parameters: [
    range('velocities', 'number', 'm/s', 'velocity of each repetition, in order', {
      cells: { min: 0, because: 'The bar moves up.' },
    }),
  ],
  result: { is: 'number', unit: '%', about: 'loss from the fastest repetition to the last' },
  rule: '100 (1 − last / fastest)',
  sources: [published('Pareja-Blanco 2017, Scand J Med Sci Sports 27:724–735; volume and pages from memory')],
  cautions: [loadCaution],
  notes: ['A range is read row by row, blanks left out. 0 when the last repetition is the fastest.'],
  examples: [
    { formula: '=STRENGTH.VELOCITY.LOSS({0.6;0.64;0.55;0.48})', gives: 25, says: '.48 beside .64' },
    { formula: '=STRENGTH.VELOCITY.LOSS({0.5;0.6})', gives: 0 },
  ],
  seeAlso: ['STRENGTH.FROM.VELOCITY', 'STRENGTH.RIR'],
  typical: [columnRange(0.6, 0.62, 0.55, 0.5)],
  compute: (velocities) => {
    const { values } = numbersIn(velocities);
    if (values.length < 2) return tooFew('velocities', values.length, 2, 'repetition');
    let fastest = 0;
    for (const v of values) fastest = Math.max(fastest, v);
    if (fastest === 0)
      return issue('#DIV/0!', 'zero-divisor', {
        parameter: 'velocities',
        remedy: 'Enter the measured velocities.',
      });
    return 100 * (1 - values.at(-1)! / fastest);
  },
});
