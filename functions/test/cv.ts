import { defineFunction } from '../core/define.ts';
import { square } from '../core/elementary/pow.ts';
import { issue } from '../core/issue.ts';
import { secondary } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { pairsOf } from '../statistics/columns.ts';
import { tooFew } from '../statistics/few.ts';
import { paired, pairNotes } from '../statistics/parameters.ts';

/** TEST.CV(trial1, trial2): per cent. @throws nothing; no pair #N/A, a pair with mean 0 #DIV/0!. */
export default defineFunction({
  name: 'TEST.CV',
  family: 'reliability',
  summary: 'Coefficient of variation of duplicate measurements, in per cent.',
  searchWords: ['relative error', 'typical error per cent', 'coefficient of variation', 'CV%'],
  parameters: [
    paired('trial1', 'first trial of each subject'),
    paired('trial2', 'second trial of each subject'),
  ],
  result: { is: 'number', unit: '%', about: 'root mean square of the CVs of the pairs' },
  rule: '100 · √(mean of ((trial1 − trial2)²/2) / ((trial1 + trial2)/2)²)',
  sources: [secondary('Hopkins 2000, Sports Med 30:1–15; root-mean-square of duplicate CVs')],
  notes: [
    'Other definitions (typical error over the mean, or from logarithms) differ by a few per cent of the value: name this one.',
    ...pairNotes,
  ],
  examples: [
    { formula: '=TEST.CV({100;102;98;110}, {104;101;99;106})', gives: 1.9715942829 },
    { formula: '=TEST.CV({90}, {110})', gives: 14.1421, says: 'one pair: 100 · (20/√2)/100' },
  ],
  seeAlso: ['TEST.SEM.TRIALS', 'TEST.SWC'],
  typical: [columnRange(40, 42, 45, 39), columnRange(41, 42, 43, 40)],
  compute: (trial1, trial2) => {
    const { a, b, n } = pairsOf(trial1, trial2);
    if (n === 0) return tooFew('trial1', 0, 1, 'pair');
    let sum = 0;
    for (let i = 0; i < n; i++) {
      const middle = (a[i]! + b[i]!) / 2;
      if (middle === 0)
        return issue('#DIV/0!', 'zero-pair', { parameter: 'trial1', details: { pair: i + 1 } });
      sum += square((a[i]! - b[i]!) / middle) / 2;
    }
    return 100 * Math.sqrt(sum / n);
  },
});
