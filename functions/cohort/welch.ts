import { defineFunction } from '../core/define.ts';
import { optionOr } from '../core/parameter.ts';
import { secondary } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { columnOf } from '../statistics/columns.ts';
import { noSpread, tooFew } from '../statistics/few.ts';
import { column } from '../statistics/parameters.ts';
import { welch, welchInterval, welchP } from '../statistics/two-groups.ts';

/** COHORT.WELCH(a, b, [what="p"]): a figure of the comparison of mean a − mean b. @throws nothing; fewer than 2 values #N/A, no spread #DIV/0!. */
export default defineFunction({
  name: 'COHORT.WELCH',
  family: 'groups',
  summary: 'Comparison of two group means without assuming equal spread (Welch’s t).',
  searchWords: [
    't-test',
    'p value',
    'difference of means',
    'confidence interval',
    'unequal variances',
    'compare groups',
    'compare two groups',
  ],
  parameters: [
    column('a', 'first group'),
    column('b', 'second group'),
    optionOr(
      'p',
      'what',
      ['p', 't', 'df', 'low', 'high'],
      'two-sided p, t, degrees of freedom, or a limit of the 95 % interval',
    ),
  ],
  result: {
    is: 'number',
    unit: '',
    about: 'the figure asked for; low and high in the unit of the values',
    measures: 'unknown',
  },
  rule: [
    't = (mean a − mean b)/√(s_a²/n_a + s_b²/n_b)',
    'df = (s_a²/n_a + s_b²/n_b)² / ((s_a²/n_a)²/(n_a − 1) + (s_b²/n_b)²/(n_b − 1))',
    'low, high: mean a − mean b ∓ t(.975, df) · √(s_a²/n_a + s_b²/n_b)',
  ].join('\n'),
  sources: [secondary('Welch 1947, Biometrika 34:28–35')],
  cautions: [
    'For separate groups of separate people. p says how surprising the difference would be if there were none; it says nothing about its size.',
  ],
  notes: [
    'The sign is a − b; COHORT.D and COHORT.G have b − a.',
    'Blanks are left out of each group by itself.',
  ],
  examples: [
    {
      formula:
        '=COHORT.WELCH({0.7;-1.6;-0.2;-1.2;-0.1;3.4;3.7;0.8;0;2}, {1.9;0.8;1.1;0.1;-0.1;4.4;5.5;1.6;4.6;3.4})',
      gives: 0.07939414019,
      says: 'Student’s sleep data',
    },
    { formula: '=COHORT.WELCH({1;3}, {5;7}, "t")', gives: -2.8284271247, says: '−4/√2' },
    { formula: '=COHORT.WELCH({1;3}, {5;7}, "df")', gives: 2 },
  ],
  seeAlso: ['COHORT.D', 'COHORT.G', 'TEST.BIAS'],
  typical: [columnRange(38, 41, 45, 36), columnRange(40, 44, 47, 39), 'p'],
  compute: (a, b, what) => {
    const [first, second] = [columnOf(a), columnOf(b)];
    if (first.n < 2) return tooFew('a', first.n, 2);
    if (second.n < 2) return tooFew('b', second.n, 2);
    if (first.sd === 0 && second.sd === 0) return noSpread('a');
    const found = welch(first, second);
    if (what === 'p') return welchP(found);
    if (what === 't' || what === 'df') return found[what];
    return welchInterval(found)[what === 'low' ? 0 : 1];
  },
  steps: (a, b) => {
    const [first, second] = [columnOf(a), columnOf(b)];
    if (first.n < 2 || second.n < 2 || (first.sd === 0 && second.sd === 0)) return [];
    const found = welch(first, second);
    const [low, high] = welchInterval(found);
    return [
      {
        name: 'group a',
        value: `n ${first.n}, mean ${figure(first.mean)}, SD ${figure(first.sd)}`,
        unit: '',
      },
      {
        name: 'group b',
        value: `n ${second.n}, mean ${figure(second.mean)}, SD ${figure(second.sd)}`,
        unit: '',
      },
      { name: 'difference a − b', value: found.difference, unit: '' },
      { name: 'standard error', value: found.se, unit: '' },
      { name: 't', symbol: 't', value: found.t, unit: '' },
      { name: 'degrees of freedom', symbol: 'df', value: found.df, unit: '' },
      { name: 'two-sided p', symbol: 'p', value: welchP(found), unit: '' },
      { name: '95 % interval', value: `${figure(low)} to ${figure(high)}`, unit: '' },
    ];
  },
});

const figure = (value: number): string => String(Number(value.toPrecision(5)));
