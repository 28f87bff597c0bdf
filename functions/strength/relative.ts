import { defineFunction } from '../core/define.ts';
import { definition } from '../core/source.ts';
import { loadParameter, massParameter } from '../tables/lifting.ts';

/** STRENGTH.RELATIVE(load, mass): load in body masses, a plain number. @throws nothing. */
export default defineFunction({
  name: 'STRENGTH.RELATIVE',
  family: 'strength',
  summary: 'Load in body masses.',
  searchWords: ['relative strength', 'bodyweight ratio', 'times bodyweight'],
  parameters: [loadParameter('load', 'load lifted'), massParameter],
  result: { is: 'number', unit: '', about: 'load / mass' },
  rule: 'load / mass',
  sources: [definition('ratio of two masses')],
  notes: ['A ratio favours light lifters; STRENGTH.ALLOMETRIC takes most of that out.'],
  examples: [
    { formula: '=STRENGTH.RELATIVE(180, 90)', gives: 2 },
    { formula: '=STRENGTH.RELATIVE(95, 60)', gives: 1.5833 },
  ],
  seeAlso: ['STRENGTH.ALLOMETRIC', 'STRENGTH.WILKS', 'STRENGTH.DOTS'],
  typical: [140, 80],
  directions: { load: 1, mass: -1 },
  compute: (load, mass) => load / mass,
});
