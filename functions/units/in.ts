import { defineFunction } from '../core/define.ts';
import { number } from '../core/parameter.ts';
import { inch } from '../tables/yard-and-pound.ts';

/** IN(x): inches in cm. @throws nothing. */
export default defineFunction({
  name: 'IN',
  family: 'units',
  summary: 'Inches as centimetres.',
  searchWords: ['inch', 'convert', 'imperial'],
  parameters: [number('x', 'in', 'a length in inches')],
  result: { is: 'number', unit: 'cm', about: '2.54 x' },
  rule: '2.54 × x',
  sources: [inch.source],
  constants: [inch],
  notes: [
    'A column can also show inches by itself: its display unit converts what is typed and what is seen.',
  ],
  examples: [
    { formula: '=IN(10)', gives: 25.4 },
    { formula: '=IN(0.75)', gives: 1.905, says: 'a heel of three quarters of an inch' },
  ],
  seeAlso: ['FT.IN', 'MM', 'LB'],
  typical: [10],
  directions: { x: 1 },
  compute: (x) => inch.value * x,
});
