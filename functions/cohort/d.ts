import { defineFunction } from '../core/define.ts';
import { definition, published } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { columnOf } from '../statistics/columns.ts';
import { noSpread, tooFew } from '../statistics/few.ts';
import { column } from '../statistics/parameters.ts';
import { pooledSd } from '../statistics/two-groups.ts';

/** COHORT.D(a, b): standardised mean difference b − a. @throws nothing; fewer than 2 values #N/A, no spread #DIV/0!. */
export default defineFunction({
  name: 'COHORT.D',
  family: 'groups',
  summary: 'Standardised difference of two groups (Cohen’s d): mean b less mean a, in pooled SDs.',
  searchWords: ['Cohen', 'effect size', 'standardised mean difference', 'SMD'],
  parameters: [column('a', 'first group'), column('b', 'second group')],
  result: { is: 'number', unit: '', about: 'difference b − a in pooled SDs' },
  rule: '(mean b − mean a) / √(((n_a − 1) s_a² + (n_b − 1) s_b²) / (n_a + n_b − 2))',
  sources: [
    definition('difference of means over the pooled SD'),
    published('Hedges 1981, J Educ Stat 6:107–128'),
  ],
  cautions: [
    'For separate groups. Before and after of the same people are pairs: their difference has its own SD.',
  ],
  notes: ['The sign is b − a; COHORT.WELCH has a − b. COHORT.G corrects the bias of small groups.'],
  examples: [
    { formula: '=COHORT.D({1;2;3}, {2;3;4})', gives: 1 },
    {
      formula:
        '=COHORT.D({0.7;-1.6;-0.2;-1.2;-0.1;3.4;3.7;0.8;0;2}, {1.9;0.8;1.1;0.1;-0.1;4.4;5.5;1.6;4.6;3.4})',
      gives: 0.8321810813,
      says: 'Student’s sleep data',
    },
  ],
  seeAlso: ['COHORT.G', 'COHORT.WELCH'],
  typical: [columnRange(38, 41, 45, 36), columnRange(40, 44, 47, 39)],
  compute: (a, b) => {
    const [first, second] = [columnOf(a), columnOf(b)];
    if (first.n < 2) return tooFew('a', first.n, 2);
    if (second.n < 2) return tooFew('b', second.n, 2);
    const sd = pooledSd(first, second);
    return sd === 0 ? noSpread('a') : (second.mean - first.mean) / sd;
  },
  steps: (a, b) => {
    const [first, second] = [columnOf(a), columnOf(b)];
    return [
      { name: 'mean a', value: first.mean, unit: '' },
      { name: 'mean b', value: second.mean, unit: '' },
      { name: 'pooled SD', symbol: 's', value: pooledSd(first, second), unit: '' },
      {
        name: 'd',
        rule: '(mean b − mean a)/s',
        value: (second.mean - first.mean) / pooledSd(first, second),
        unit: '',
      },
    ];
  },
});
