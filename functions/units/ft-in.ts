import { defineFunction } from '../core/define.ts';
import { number } from '../core/parameter.ts';
import { inch } from '../tables/yard-and-pound.ts';

/** FT.IN(feet, inches): cm. @throws nothing. */
export default defineFunction({
  name: 'FT.IN',
  family: 'units',
  summary: 'Feet and inches as centimetres.',
  searchWords: ['height in feet', 'stature', 'convert', 'imperial'],
  parameters: [number('feet', 'ft', 'whole or part feet'), number('inches', 'in', 'and inches')],
  result: { is: 'number', unit: 'cm', about: '2.54 (12 feet + inches)' },
  rule: '2.54 × (12 × feet + inches)',
  sources: [inch.source],
  constants: [inch],
  notes: ['Twelve inches are a foot.'],
  examples: [
    { formula: '=FT.IN(5, 9)', gives: 175.26 },
    { formula: '=FT.IN(6, 1.5)', gives: 186.69 },
  ],
  seeAlso: ['IN', 'SEG.ESTIMATE'],
  typical: [5, 9],
  directions: { feet: 1, inches: 1 },
  compute: (feet, inches) => inch.value * (12 * feet + inches),
});
