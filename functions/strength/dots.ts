import { defineFunction } from '../core/define.ts';
import { dots, dotsSource, heldWithin, polynomialScore } from '../tables/federation.ts';
import { massParameter, sexParameter, totalParameter } from '../tables/lifting.ts';

/** STRENGTH.DOTS(total, mass, sex): points. @throws nothing. */
export default defineFunction({
  name: 'STRENGTH.DOTS',
  family: 'strength',
  summary: 'DOTS points of a powerlifting total.',
  searchWords: ['powerlifting', 'coefficient', 'score', 'compare lifters'],
  parameters: [totalParameter('total of the meet'), massParameter, sexParameter],
  result: { is: 'number', unit: 'points', about: 'DOTS points' },
  rule: '500 · total / (a + bx + cx² + dx³ + ex⁴), x = body mass limited to the range of the table',
  sources: [dotsSource],
  constants: [
    ...dots.male.coefficients,
    ...dots.male.limits,
    ...dots.female.coefficients,
    ...dots.female.limits,
  ],
  notes: ['Body mass is limited to 40–210 kg (M) and 40–150 kg (F).'],
  examples: [
    { formula: '=STRENGTH.DOTS(1000, 100, "M")', gives: 615.5157645596 },
    { formula: '=STRENGTH.DOTS(500, 60, "F")', gives: 554.2728123324 },
    { formula: '=STRENGTH.DOTS(1000, 250, "M")', gives: 495.6206617883, says: 'the same as at 210 kg' },
  ],
  seeAlso: ['STRENGTH.WILKS', 'STRENGTH.IPFGL', 'STRENGTH.SINCLAIR'],
  typical: [500, 83, 'male'],
  directions: { total: 1 },
  compute: (total, mass, sex) => polynomialScore(dots[sex], total, mass),
  steps: (total, mass, sex) => [
    {
      name: 'body mass used',
      symbol: 'x',
      value: heldWithin(dots[sex], mass),
      unit: 'kg',
      constants: dots[sex].limits,
    },
    {
      name: 'points',
      value: polynomialScore(dots[sex], total, mass),
      unit: 'points',
      constants: dots[sex].coefficients,
    },
  ],
});
