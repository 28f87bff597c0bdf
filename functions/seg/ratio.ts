import { defineFunction } from '../core/define.ts';
import { number } from '../core/parameter.ts';
import { definition } from '../core/source.ts';

const because = 'A length is more than 0.';

/** SEG.RATIO(a, b): a/b, a plain number. @throws nothing; b = 0 gives #DIV/0!, anything else not positive #NUM!. */
export default defineFunction({
  name: 'SEG.RATIO',
  family: 'segments',
  summary: 'Ratio of two segment lengths, such as femur to tibia.',
  searchWords: ['proportion', 'long femur', 'leverage'],
  parameters: [
    number('a', 'cm', 'length above the line', { bounds: { above: 0, because } }),
    number('b', 'cm', 'length below the line', {
      bounds: { min: 0, because: 'No length is negative.' },
      divisor: true,
    }),
  ],
  result: { is: 'number', unit: '', about: 'a / b' },
  rule: 'a / b',
  sources: [definition('ratio of two lengths')],
  notes: [
    'Both lengths in the same unit; femur over tibia and trunk over femur have survey values in SEG.NORM.',
  ],
  examples: [
    { formula: '=SEG.RATIO(42, 40)', gives: 1.05 },
    {
      formula: '=SEG.RATIO(41.9, 42.3)',
      gives: 0.9905,
      says: 'the first man of the 2012 survey, femur to tibia',
    },
  ],
  seeAlso: ['SEG.CRURAL', 'SEG.NORM', 'SEG.CHECK'],
  typical: [42, 40],
  directions: { a: 1, b: -1 },
  compute: (a, b) => a / b,
});
