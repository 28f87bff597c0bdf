import { defineFunction } from '../core/define.ts';
import { type Issue, isIssue } from '../core/issue.ts';
import { optionOr } from '../core/parameter.ts';
import { memory, published } from '../core/source.ts';
import { type Range, rangeOf } from '../core/value.ts';
import { completeRows } from '../statistics/columns.ts';
import { chiSquareQuantile } from '../statistics/distributions.ts';
import { tooFew } from '../statistics/few.ts';
import { meanSquares } from '../statistics/icc.ts';
import { iccRange } from '../statistics/icc-function.ts';
import { once } from '../statistics/memo.ts';
import { confidence } from '../statistics/parameters.ts';

interface Residual {
  readonly n: number;
  readonly k: number;
  /** Residual mean square of subjects × trials. */
  readonly ems: number;
  readonly df: number;
}

const squaresOf = once((rows: Range) => meanSquares(completeRows(rows)));

function residualOf(rows: Range): Residual | Issue {
  if (rows.columns < 2) return tooFew('range', rows.columns, 2, 'trial column');
  const complete = completeRows(rows);
  if (complete.length < 2) return tooFew('range', complete.length, 2, 'complete row');
  const { n, k, ems } = squaresOf(rows);
  return { n, k, ems, df: (n - 1) * (k - 1) };
}

function limit({ ems, df }: Residual, side: 'low' | 'high', share: number): number {
  if (ems === 0) return 0;
  return Math.sqrt((ems * df) / chiSquareQuantile(side === 'low' ? 'above' : 'below', (1 - share) / 2, df));
}

/** TEST.SEM.TABLE(range, [what="sem"], [confidence=.95]): in the unit of the values. @throws nothing; too few rows or trials #N/A. */
export default defineFunction({
  name: 'TEST.SEM.TABLE',
  family: 'reliability',
  summary: 'Standard error of measurement from a table of repeated trials, with its interval.',
  searchWords: ['measurement error', 'typical error', 'consistency', 'reliability', 'repeated measures'],
  parameters: [
    iccRange,
    optionOr('sem', 'what', ['sem', 'low', 'high'], 'the standard error, or a limit of its interval'),
    confidence,
  ],
  result: {
    is: 'number',
    unit: '',
    about: 'standard error of one trial, in the unit of the values',
    measures: { same: [0] },
  },
  rule: [
    'sem: √ of the residual mean square of subjects × trials (two-way)',
    'low, high: √(SS / χ²), SS = EMS · df, df = (subjects − 1)(trials − 1)',
  ].join('\n'),
  sources: [
    published('Weir 2005, J Strength Cond Res 19:231–240'),
    memory('Hopkins 2000, Sports Med 30:1–15 (interval)'),
  ],
  notes: [
    'The SEM of consistency: a shift common to all between trials is not in it. TEST.SEM(sd, icc) carries that shift where the ICC does (forms 2). Say which one you give.',
    'Rows with a blank are left out. At least 2 subjects and 2 trials are needed. No residual gives 0 for all three.',
  ],
  examples: [
    {
      formula: '=TEST.SEM.TABLE({146,140;148,152;170,152;90,99;157,145;156,153;176,167;205,218})',
      gives: 7.5569,
      says: 'data set A of Weir 2005',
    },
    {
      formula: '=TEST.SEM.TABLE({146,140;148,152;170,152;90,99;157,145;156,153;176,167;205,218}, "high")',
      gives: 15.3804,
    },
    { formula: '=TEST.SEM.TABLE({40,41;42,43;45,46})', gives: 0, says: 'a shift common to all' },
  ],
  seeAlso: ['TEST.SEM', 'TEST.SEM.TRIALS', 'TEST.MDC', 'TEST.ICC', 'TEST.PUBLISHED'],
  typical: [rangeOf(4, 2, [38, 39, 41, 40, 45, 46, 36, 36]), 'sem', 0.95],
  compute: (range, what, confidence) => {
    const found = residualOf(range);
    if (isIssue(found)) return found;
    return what === 'sem' ? Math.sqrt(found.ems) : limit(found, what, confidence);
  },
  steps: (range, _what, confidence) => {
    const found = residualOf(range);
    if (isIssue(found)) return [];
    return [
      { name: 'subjects with all trials', symbol: 'n', value: found.n, unit: '' },
      { name: 'trials', symbol: 'k', value: found.k, unit: '' },
      { name: 'residual mean square', symbol: 'EMS', value: found.ems, unit: '' },
      { name: 'degrees of freedom', symbol: 'df', rule: '(n − 1)(k − 1)', value: found.df, unit: '' },
      {
        name: 'standard error of measurement',
        symbol: 'sem',
        rule: '√EMS',
        value: Math.sqrt(found.ems),
        unit: '',
      },
      {
        name: `lower limit, ${confidence * 100} %`,
        symbol: 'low',
        value: limit(found, 'low', confidence),
        unit: '',
      },
      {
        name: `upper limit, ${confidence * 100} %`,
        symbol: 'high',
        value: limit(found, 'high', confidence),
        unit: '',
      },
    ];
  },
});
