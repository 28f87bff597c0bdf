import { defineFunction } from '../core/define.ts';
import { issue } from '../core/issue.ts';
import { numberOr, range } from '../core/parameter.ts';
import { definition, practice, secondary } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { pairsOf } from '../statistics/columns.ts';
import { allEqual, lineThrough } from '../statistics/line.ts';
import { loadCaution } from '../tables/sources.ts';

/** STRENGTH.FROM.VELOCITY(loads, velocities, [threshold=0.30]): one-repetition maximum, kg. @throws nothing; fewer than 2 distinct loads #N/A, a line that does not fall #NUM!. */
export default defineFunction({
  name: 'STRENGTH.FROM.VELOCITY',
  family: 'strength',
  summary: 'Estimated 1RM from the fall of bar velocity over several loads.',
  searchWords: [
    'load-velocity profile',
    'velocity-based training',
    'VBT',
    'minimum velocity threshold',
    '1RM',
  ],
  parameters: [
    range('loads', 'number', 'kg', 'loads of the sets', {
      together: 'sets',
      cells: { min: 0, max: 700, because: 'More than any barbell squat: check the unit.' },
    }),
    range('velocities', 'number', 'm/s', 'mean velocity of the fastest repetition at each load', {
      together: 'sets',
      cells: { min: 0, because: 'The bar moves up.' },
    }),
    numberOr(0.3, 'threshold', 'm/s', 'velocity at the maximum', {
      bounds: { min: 0, because: 'The bar moves up.' },
    }),
  ],
  result: { is: 'number', unit: 'kg', about: 'load at which the line reaches the threshold' },
  rule: 'least squares v = a + b·load; (threshold − a)/b',
  sources: [
    secondary('Jovanović & Flanagan 2014, J Aust Strength Cond 22(2):58–69 (the method)'),
    practice('0.30 m/s as the mean velocity of a squat at its maximum'),
    definition('least squares, velocity on load'),
  ],
  cautions: [
    'The line is drawn beyond the data: the lighter the heaviest set, the further the guess.',
    loadCaution,
  ],
  notes: [
    'Velocity is fitted on load. Fitting load on velocity gives another answer, unless all points lie on the line.',
    'Velocity at the maximum differs between lifters and devices: measure your own where you can.',
    'Pairs with a blank are left out; fewer than two different loads give #N/A.',
  ],
  examples: [
    {
      formula: '=STRENGTH.FROM.VELOCITY({60;80;100;120}, {1.05;0.86;0.68;0.49})',
      gives: 140.5376,
      says: 'slope −.0093, intercept 1.607',
    },
    { formula: '=STRENGTH.FROM.VELOCITY({50;100}, {1;0.5}, 0.25)', gives: 125 },
  ],
  seeAlso: ['STRENGTH.MAX', 'COHORT.FIT'],
  typical: [columnRange(60, 80, 100, 120), columnRange(1.05, 0.86, 0.68, 0.49), 0.3],
  directions: { threshold: -1 },
  compute: (loads, velocities, threshold) => {
    const pairs = pairsOf(loads, velocities);
    if (pairs.n < 2 || allEqual(pairs.a))
      return issue('#N/A', 'too-few', {
        parameter: 'loads',
        expected: '2 different loads with their velocities',
        details: { have: pairs.n === 0 ? 'no complete pair' : 'only one load' },
      });
    const { slope, intercept } = lineThrough(pairs);
    if (slope >= 0) return issue('#NUM!', 'velocity-not-falling', { parameter: 'velocities' });
    const max = (threshold - intercept) / slope;
    return max >= 0
      ? max
      : issue('#NUM!', 'below-threshold', { parameter: 'threshold', received: threshold });
  },
  steps: (loads, velocities, threshold) => {
    const { slope, intercept } = lineThrough(pairsOf(loads, velocities));
    return [
      { name: 'slope', symbol: 'b', rule: 'm/s for each kg', value: slope, unit: '' },
      { name: 'intercept', symbol: 'a', value: intercept, unit: 'm/s' },
      {
        name: 'load at the threshold',
        rule: '(threshold − a)/b',
        value: (threshold - intercept) / slope,
        unit: 'kg',
      },
    ];
  },
});
