import { defineFunction } from '../core/define.ts';
import { published } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { columnOf } from '../statistics/columns.ts';
import { hedgesJ } from '../statistics/distributions.ts';
import { noSpread, tooFew } from '../statistics/few.ts';
import { column } from '../statistics/parameters.ts';
import { pooledSd } from '../statistics/two-groups.ts';

/** COHORT.G(a, b): standardised mean difference b − a, corrected. @throws nothing; fewer than 2 values #N/A, no spread #DIV/0!. */
export default defineFunction({
  name: 'COHORT.G',
  family: 'groups',
  summary: 'Standardised difference of two groups with Hedges’ correction for small groups.',
  searchWords: ['Hedges', 'effect size', 'standardised mean difference', 'small sample'],
  parameters: [column('a', 'first group'), column('b', 'second group')],
  result: { is: 'number', unit: '', about: 'difference b − a in pooled SDs, corrected' },
  rule: 'COHORT.D · J(m), m = n_a + n_b − 2, J(m) = Γ(m/2) / (√(m/2) Γ((m − 1)/2))',
  sources: [published('Hedges 1981, J Educ Stat 6:107–128')],
  cautions: [
    'For separate groups. Before and after of the same people are pairs: their difference has its own SD.',
  ],
  notes: [
    'The exact gamma form is used, not 1 − 3/(4m − 1); they differ by 1 in 10 000 at ten a group.',
    'The sign is b − a; COHORT.WELCH has a − b.',
  ],
  examples: [
    { formula: '=COHORT.G({1;2}, {2;3})', gives: 0.7978845608, says: '√2 · .5641896' },
    {
      formula:
        '=COHORT.G({0.7;-1.6;-0.2;-1.2;-0.1;3.4;3.7;0.8;0;2}, {1.9;0.8;1.1;0.1;-0.1;4.4;5.5;1.6;4.6;3.4})',
      gives: 0.7969352392,
      says: 'Student’s sleep data',
    },
  ],
  seeAlso: ['COHORT.D', 'COHORT.WELCH'],
  typical: [columnRange(38, 41, 45, 36), columnRange(40, 44, 47, 39)],
  compute: (a, b) => {
    const [first, second] = [columnOf(a), columnOf(b)];
    if (first.n < 2) return tooFew('a', first.n, 2);
    if (second.n < 2) return tooFew('b', second.n, 2);
    const sd = pooledSd(first, second);
    if (sd === 0) return noSpread('a');
    return (hedgesJ(first.n + second.n - 2) * (second.mean - first.mean)) / sd;
  },
  steps: (a, b) => {
    const [first, second] = [columnOf(a), columnOf(b)];
    const m = first.n + second.n - 2;
    return [
      { name: 'degrees of freedom', symbol: 'm', value: m, unit: '' },
      { name: 'pooled SD', value: pooledSd(first, second), unit: '' },
      { name: 'd', value: (second.mean - first.mean) / pooledSd(first, second), unit: '' },
      {
        name: 'correction',
        symbol: 'J',
        rule: 'Γ(m/2) / (√(m/2) Γ((m − 1)/2))',
        value: hedgesJ(m),
        unit: '',
      },
    ];
  },
});
