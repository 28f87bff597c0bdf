import { defineFunction } from '../core/define.ts';
import { issue } from '../core/issue.ts';
import { optionOr } from '../core/parameter.ts';
import { definition, secondary } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { pairsOf } from '../statistics/columns.ts';
import { correlationP, fisherInterval, pearson, spearman } from '../statistics/correlation.ts';
import { noSpread, tooFew } from '../statistics/few.ts';
import { allEqual } from '../statistics/line.ts';
import { onceForTwo } from '../statistics/memo.ts';
import { paired, pairNotes } from '../statistics/parameters.ts';

const coefficients = {
  pearson: onceForTwo((x: Parameters<typeof pairsOf>[0], y: Parameters<typeof pairsOf>[1]) =>
    pearson(pairsOf(x, y)),
  ),
  spearman: onceForTwo((x: Parameters<typeof pairsOf>[0], y: Parameters<typeof pairsOf>[1]) =>
    spearman(pairsOf(x, y)),
  ),
};

/** COHORT.R(x, y, [what="r"], [method="pearson"]): correlation, −1 to 1, or a figure about it. @throws nothing; too few pairs #N/A, no spread #DIV/0!, an interval with "spearman" #VALUE!. */
export default defineFunction({
  name: 'COHORT.R',
  family: 'groups',
  summary: 'Correlation of two columns, with its 95 % interval and p.',
  searchWords: ['Pearson', 'Spearman', 'correlation', 'association', 'rank correlation'],
  parameters: [
    paired('x', 'first measure'),
    paired('y', 'second measure'),
    optionOr(
      'r',
      'what',
      ['r', 'low', 'high', 'p', 'n'],
      'the correlation, a limit of its interval, p, or the pairs',
    ),
    optionOr('pearson', 'method', ['pearson', 'spearman'], 'of the values, or of their ranks'),
  ],
  result: { is: 'number', unit: '', about: 'the figure asked for' },
  rule: [
    'pearson: Σ(x − x̄)(y − ȳ) / √(Σ(x − x̄)² Σ(y − ȳ)²)',
    'spearman: the same of the ranks, ties sharing the mean of their ranks',
    'low, high: tanh(atanh r ∓ z(.975)/√(n − 3))',
    'p: two-sided Student’s t of r √((n − 2)/(1 − r²)) with n − 2 degrees of freedom',
  ].join('\n'),
  sources: [definition('product-moment correlation'), secondary('Fisher 1921, Metron 1:3–32 (interval)')],
  cautions: [
    'A correlation is no evidence of a cause, and none of agreement: two methods can correlate and still differ.',
  ],
  notes: [
    ...pairNotes,
    '"low" and "high" need 4 pairs and are given for "pearson" only; p needs 3 pairs, r 2.',
    'r = ±1 gives low = high = r and p = 0.',
  ],
  examples: [
    { formula: '=COHORT.R({1;2;3;4}, {2;4;6;8})', gives: 1 },
    { formula: '=COHORT.R({1;2;3;4}, {1;3;2;4})', gives: 0.8 },
    { formula: '=COHORT.R({1;2;3;4}, {1;8;27;64}, "r", "spearman")', gives: 1 },
    { formula: '=COHORT.R({1;2;3}, {2;1;3}, "low")', gives: '#N/A', says: 'an interval needs 4 pairs' },
  ],
  seeAlso: ['COHORT.FIT', 'TEST.BIAS', 'TEST.ICC'],
  typical: [columnRange(38, 41, 45, 36, 40), columnRange(40, 44, 47, 39, 39), 'r', 'pearson'],
  clash: (_x, _y, what, method) =>
    method === 'spearman' && (what === 'low' || what === 'high')
      ? issue('#VALUE!', 'not-with-method', {
          parameter: 'what',
          received: what,
          expected: '"r", "p" or "n"',
          details: { method },
        })
      : undefined,
  compute: (x, y, what, method) => {
    const { a, b, n } = pairsOf(x, y);
    if (what === 'n') return n;
    const need = what === 'r' ? 2 : what === 'p' ? 3 : 4;
    if (n < need) return tooFew('x', n, need, 'pair');
    if (allEqual(a)) return noSpread('x');
    if (allEqual(b)) return noSpread('y');
    const r = coefficients[method](x, y);
    if (what === 'r') return r;
    return what === 'p' ? correlationP(r, n) : fisherInterval(r, n)[what === 'low' ? 0 : 1];
  },
});
