import { defineFunction } from '../core/define.ts';
import { columnRange } from '../core/value.ts';
import { agreementSource } from '../statistics/agreement.ts';
import { differencesOf } from '../statistics/columns.ts';
import { mean } from '../statistics/describe.ts';
import { tooFew } from '../statistics/few.ts';
import { paired, pairNotes } from '../statistics/parameters.ts';

/** TEST.BIAS(a, b): mean of a − b, in the unit of the values. @throws nothing; no pair #N/A. */
export default defineFunction({
  name: 'TEST.BIAS',
  family: 'reliability',
  summary: 'Mean difference between two methods or trials.',
  searchWords: ['Bland-Altman', 'systematic error', 'change in mean', 'method comparison'],
  parameters: [paired('a', 'first method or trial'), paired('b', 'second method or trial')],
  result: { is: 'number', unit: '', about: 'mean of a − b, in their unit', measures: { same: [0, 1] } },
  rule: 'mean(a − b)',
  sources: [agreementSource],
  notes: [
    'The sign is a − b: for the change from a first to a second trial put the second trial first.',
    ...pairNotes,
  ],
  examples: [
    { formula: '=TEST.BIAS({10;20;30}, {12;21;33})', gives: -2 },
    { formula: '=TEST.BIAS({494;395;516}, {512;430;520})', gives: -19 },
  ],
  seeAlso: ['TEST.LIMIT.LOW', 'TEST.LIMIT.HIGH', 'COHORT.WELCH'],
  typical: [columnRange(40, 42, 45, 39), columnRange(41, 42, 43, 40)],
  compute: (a, b) => {
    const differences = differencesOf(a, b);
    return differences.length === 0 ? tooFew('a', 0, 1, 'pair') : mean(differences);
  },
});
