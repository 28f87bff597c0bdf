import { defineFunction } from '../core/define.ts';
import { number } from '../core/parameter.ts';
import { definition } from '../core/source.ts';

/** MM(x): millimetres in cm. @throws nothing. */
export default defineFunction({
  name: 'MM',
  family: 'units',
  summary: 'Millimetres as centimetres.',
  searchWords: ['millimetre', 'millimeter', 'convert', 'metric'],
  parameters: [number('x', 'mm', 'a length in millimetres')],
  result: { is: 'number', unit: 'cm', about: 'x / 10' },
  rule: 'x / 10',
  sources: [definition('10 mm are 1 cm')],
  notes: [
    'A column can also show millimetres by itself: its display unit converts what is typed and what is seen.',
  ],
  examples: [
    { formula: '=MM(419)', gives: 41.9 },
    { formula: '=MM(13)', gives: 1.3, says: 'a heel drop printed in mm' },
  ],
  seeAlso: ['IN', 'LIFT.NET'],
  typical: [419],
  directions: { x: 1 },
  compute: (x) => x / 10,
});
