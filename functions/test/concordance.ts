import { defineFunction } from '../core/define.ts';
import { square } from '../core/elementary/pow.ts';
import { published } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { pairsOf } from '../statistics/columns.ts';
import { mean } from '../statistics/describe.ts';
import { noSpread, tooFew } from '../statistics/few.ts';
import { paired, pairNotes } from '../statistics/parameters.ts';

/** TEST.CONCORDANCE(a, b): Lin's coefficient, −1 to 1. @throws nothing; fewer than 2 pairs #N/A, equal without spread #DIV/0!. */
export default defineFunction({
  name: 'TEST.CONCORDANCE',
  family: 'reliability',
  summary: 'Lin’s concordance coefficient: how close pairs lie to the line of equality.',
  searchWords: ['agreement', 'Lin', 'CCC', 'method comparison', 'concordance correlation coefficient'],
  parameters: [paired('a', 'first method or tester'), paired('b', 'second method or tester')],
  result: { is: 'number', unit: '', about: 'concordance; 1 where all pairs are equal' },
  rule: '2 s_ab / (s_a² + s_b² + (mean a − mean b)²), divisors n',
  sources: [published('Lin 1989, Biometrics 45:255–268; volume and pages from memory')],
  cautions: [
    'Grows with the spread among the people, like an ICC. Give TEST.BIAS and the limits of agreement beside it.',
  ],
  notes: pairNotes,
  examples: [
    { formula: '=TEST.CONCORDANCE({1;2;3}, {2;3;4})', gives: 0.571429, says: '4/7: a shift of 1' },
    { formula: '=TEST.CONCORDANCE({1;2;3}, {1;2;3})', gives: 1 },
  ],
  seeAlso: ['TEST.BIAS', 'TEST.ICC', 'COHORT.R'],
  typical: [columnRange(40, 42, 45, 39), columnRange(41, 42, 43, 40)],
  compute: (first, second) => {
    const { a, b, n } = pairsOf(first, second);
    if (n < 2) return tooFew('a', n, 2, 'pair');
    const [meanA, meanB] = [mean(a), mean(b)];
    let saa = 0;
    let sbb = 0;
    let sab = 0;
    for (let i = 0; i < n; i++) {
      const [da, db] = [a[i]! - meanA, b[i]! - meanB];
      saa += da * da;
      sbb += db * db;
      sab += da * db;
    }
    const whole = saa + sbb + n * square(meanA - meanB);
    return whole === 0 ? noSpread('a') : (2 * sab) / whole;
  },
});
