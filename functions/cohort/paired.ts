import { defineFunction } from '../core/define.ts';
import { optionOr } from '../core/parameter.ts';
import { definition } from '../core/source.ts';
import { columnRange, type Range } from '../core/value.ts';
import { differencesOf, pairsOf } from '../statistics/columns.ts';
import { mean, standardDeviation } from '../statistics/describe.ts';
import { tOf, tTwoSided } from '../statistics/distributions.ts';
import { noSpread, tooFew } from '../statistics/few.ts';
import { paired, pairNotes } from '../statistics/parameters.ts';

/** Mean and SD of after − before; an SD that is nothing but rounding is 0. */
function changesOf(
  before: Range,
  after: Range,
): { readonly n: number; readonly mean: number; readonly sd: number } {
  const { a, b } = pairsOf(after, before);
  let largest = 0;
  for (const side of [a, b]) for (const value of side) largest = Math.max(largest, Math.abs(value));
  const differences = differencesOf(after, before);
  const sd = standardDeviation(differences);
  return { n: differences.length, mean: mean(differences), sd: sd <= 1e-12 * largest ? 0 : sd };
}

/** COHORT.PAIRED(before, after, [what="p"]): a figure of after − before. @throws nothing; fewer than 2 pairs #N/A, equal differences #DIV/0! for t, p, dz. */
export default defineFunction({
  name: 'COHORT.PAIRED',
  family: 'groups',
  summary: 'Change of the same people from before to after: paired t, interval and effect size.',
  searchWords: ['paired t-test', 'pre post', 'before after', 'dependent samples', 'p value', 'effect size'],
  parameters: [
    paired('before', 'first value of each person'),
    paired('after', 'second value of each person'),
    optionOr(
      'p',
      'what',
      ['p', 't', 'df', 'mean', 'low', 'high', 'dz', 'n'],
      'two-sided p, t, degrees of freedom, mean change, a limit of its 95 % interval, mean over SD, or pairs',
    ),
  ],
  result: {
    is: 'number',
    unit: '',
    about: 'the figure asked for; mean, low and high in the unit of the values',
  },
  rule: 't = mean/(SD/√n) of after − before, df = n − 1; low, high: mean ∓ t(.975, df)·SD/√n; dz = mean/SD',
  sources: [definition('Student’s t of the differences')],
  cautions: [
    'A change is not yet an effect of training: without a group that did not train nothing says why.',
  ],
  notes: ['The sign is after − before.', ...pairNotes],
  examples: [
    {
      formula:
        '=COHORT.PAIRED({1.9;0.8;1.1;0.1;-0.1;4.4;5.5;1.6;4.6;3.4}, {0.7;-1.6;-0.2;-1.2;-0.1;3.4;3.7;0.8;0;2}, "t")',
      gives: -4.0621,
      says: 'Student’s sleep data',
    },
    { formula: '=COHORT.PAIRED({1;2;3}, {2;3;7}, "mean")', gives: 2 },
  ],
  seeAlso: ['COHORT.WELCH', 'TEST.CHANGE', 'TEST.BIAS'],
  typical: [columnRange(38, 41, 45, 36), columnRange(40, 42, 48, 37), 'p'],
  compute: (before, after, what) => {
    const { n, mean, sd } = changesOf(before, after);
    if (what === 'n') return n;
    if (n < 2) return tooFew('before', n, 2, 'pair');
    if (what === 'mean') return mean;
    if (what === 'df') return n - 1;
    const error = sd / Math.sqrt(n);
    if (what === 'low') return mean - (sd === 0 ? 0 : tOf(0.95, n - 1) * error);
    if (what === 'high') return mean + (sd === 0 ? 0 : tOf(0.95, n - 1) * error);
    if (sd === 0) return noSpread('after');
    if (what === 'dz') return mean / sd;
    return what === 't' ? mean / error : tTwoSided(mean / error, n - 1);
  },
});
