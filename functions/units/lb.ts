import { defineFunction } from '../core/define.ts';
import { number } from '../core/parameter.ts';
import { pound } from '../tables/yard-and-pound.ts';

/** LB(x): pounds in kg. @throws nothing. */
export default defineFunction({
  name: 'LB',
  family: 'units',
  summary: 'Pounds as kilograms.',
  searchWords: ['pound', 'lbs', 'convert', 'imperial'],
  parameters: [number('x', 'lb', 'a mass in pounds')],
  result: { is: 'number', unit: 'kg', about: '.45359237 x' },
  rule: '.45359237 × x',
  sources: [pound.source],
  constants: [pound],
  notes: [
    'A column can also show pounds by itself: its display unit converts what is typed and what is seen.',
  ],
  examples: [
    { formula: '=LB(100)', gives: 45.3592 },
    { formula: '=LB(45)', gives: 20.4117, says: 'a bar of 45 lb' },
  ],
  seeAlso: ['IN', 'STRENGTH.LOADABLE'],
  typical: [100],
  directions: { x: 1 },
  compute: (x) => pound.value * x,
});
