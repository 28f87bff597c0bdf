import { defineFunction } from '../core/define.ts';
import { heldWithin, polynomialScore, wilks, wilksSource } from '../tables/federation.ts';
import { massParameter, sexParameter, totalParameter } from '../tables/lifting.ts';

/** STRENGTH.WILKS(total, mass, sex): points, original constants. @throws nothing. */
export default defineFunction({
  name: 'STRENGTH.WILKS',
  family: 'strength',
  summary: 'Wilks points of a powerlifting total, original constants.',
  searchWords: ['powerlifting', 'coefficient', 'score', 'compare lifters'],
  parameters: [totalParameter('total of the meet'), massParameter, sexParameter],
  result: { is: 'number', unit: 'points', about: 'Wilks points' },
  rule: '500 · total / (a + bx + cx² + dx³ + ex⁴ + fx⁵), x = body mass limited to the range of the table',
  sources: [wilksSource],
  constants: [
    ...wilks.male.coefficients,
    ...wilks.male.limits,
    ...wilks.female.coefficients,
    ...wilks.female.limits,
  ],
  notes: [
    'These are the original constants, not the revision of 2020.',
    'Body mass is limited to 40–201.9 kg (M) and 26.51–154.53 kg (F), where the polynomial was fitted.',
  ],
  examples: [
    { formula: '=STRENGTH.WILKS(1000, 100, "M")', gives: 608.5890719067 },
    { formula: '=STRENGTH.WILKS(500, 60, "female")', gives: 557.4434376465 },
    { formula: '=STRENGTH.WILKS(380, 63, "F")', gives: 408.1038255714 },
  ],
  seeAlso: ['STRENGTH.DOTS', 'STRENGTH.IPFGL', 'STRENGTH.SINCLAIR', 'STRENGTH.ALLOMETRIC'],
  typical: [500, 83, 'male'],
  directions: { total: 1 },
  compute: (total, mass, sex) => polynomialScore(wilks[sex], total, mass),
  steps: (total, mass, sex) => [
    {
      name: 'body mass used',
      symbol: 'x',
      value: heldWithin(wilks[sex], mass),
      unit: 'kg',
      constants: wilks[sex].limits,
    },
    {
      name: 'points',
      value: polynomialScore(wilks[sex], total, mass),
      unit: 'points',
      constants: wilks[sex].coefficients,
    },
  ],
});
