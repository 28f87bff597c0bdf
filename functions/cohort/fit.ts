import { defineFunction } from '../core/define.ts';
import { issue } from '../core/issue.ts';
import { numberMaybe, optionOr } from '../core/parameter.ts';
import { definition } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { pairsOf } from '../statistics/columns.ts';
import { tOf } from '../statistics/distributions.ts';
import { noSpread, tooFew } from '../statistics/few.ts';
import { fittedLine } from '../statistics/fit.ts';
import { allEqual, errorOfEstimate, predictionMargin } from '../statistics/line.ts';
import { paired, pairNotes } from '../statistics/parameters.ts';

const words = ['slope', 'intercept', 'see', 'r2', 'n', 'predict', 'low', 'high'] as const;

/** COHORT.FIT(x, y, [what="slope"], [at]): a figure of the least-squares line. @throws nothing; too few pairs or no `at` #N/A, no spread #DIV/0!. */
export default defineFunction({
  name: 'COHORT.FIT',
  family: 'groups',
  summary: 'Straight line through two columns: slope, intercept, error, prediction with its interval.',
  searchWords: [
    'linear regression',
    'least squares',
    'trend line',
    'prediction interval',
    'SEE',
    'R squared',
  ],
  parameters: [
    paired('x', 'the measure on the x axis'),
    paired('y', 'the measure that is fitted'),
    optionOr('slope', 'what', words, 'which figure; "low" and "high" are the 95 % prediction interval'),
    numberMaybe('at', '', 'the x for "predict", "low" and "high"'),
  ],
  result: { is: 'number', unit: '', about: 'the figure asked for', measures: 'unknown' },
  rule: [
    'slope = Σ(x − x̄)(y − ȳ)/Σ(x − x̄)²; intercept = ȳ − slope · x̄',
    'see = √(Σ residual²/(n − 2)); r2 = 1 − Σ residual²/Σ(y − ȳ)²',
    'predict = intercept + slope · at',
    'low, high: predict ∓ t(.975, n − 2) · see · √(1 + 1/n + (at − x̄)²/Σ(x − x̄)²)',
  ].join('\n'),
  sources: [definition('least squares')],
  cautions: [
    'A line holds inside the range of its x. Outside it the prediction and its interval are no more than a guess.',
  ],
  notes: [
    ...pairNotes,
    'The interval is for one new value, not for the mean.',
    'slope, intercept, r2 and predict need 2 pairs; see, low and high 3.',
  ],
  examples: [
    { formula: '=COHORT.FIT({60;80;100;120}, {1.05;0.86;0.68;0.49})', gives: -0.0093 },
    { formula: '=COHORT.FIT({1;2;3}, {2;4;6}, "predict", 5)', gives: 10 },
    { formula: '=COHORT.FIT({1;2;3}, {2;4;6}, "r2")', gives: 1 },
    { formula: '=COHORT.FIT({1;2;3}, {2;4;6}, "predict")', gives: '#N/A', says: 'no x to read the line at' },
  ],
  seeAlso: ['COHORT.R', 'COHORT.REGRESS', 'TRAIN.TREND'],
  typical: [columnRange(38, 41, 45, 36, 40), columnRange(40, 44, 47, 39, 39), 'predict', 42],
  compute: (x, y, what, at) => {
    const { a, b, n } = pairsOf(x, y);
    if (what === 'n') return n;
    const read = what === 'predict' || what === 'low' || what === 'high';
    if (read && at === undefined) return issue('#N/A', 'needs-at', { parameter: 'at', details: { what } });
    const need = what === 'see' || what === 'low' || what === 'high' ? 3 : 2;
    if (n < need) return tooFew('x', n, need, 'pair');
    if (allEqual(a)) return noSpread('x');
    const line = fittedLine(x, y);
    if (what === 'slope' || what === 'intercept') return line[what];
    if (what === 'see') return errorOfEstimate(line);
    if (what === 'r2') return allEqual(b) ? noSpread('y') : 1 - line.rss / line.syy;
    const middle = line.intercept + line.slope * at!;
    if (what === 'predict') return middle;
    const margin = predictionMargin(line, at!, tOf(0.95, n - 2));
    return what === 'low' ? middle - margin : middle + margin;
  },
  steps: (x, y, _what, at) => {
    const { a, n } = pairsOf(x, y);
    if (n < 3 || allEqual(a)) return [];
    const line = fittedLine(x, y);
    const read =
      at === undefined
        ? []
        : ([
            { name: `line at ${at}`, value: line.intercept + line.slope * at, unit: '' },
            {
              name: 'half the 95 % prediction interval',
              rule: 't · see · √(1 + 1/n + (at − x̄)²/Σ(x − x̄)²)',
              value: predictionMargin(line, at, tOf(0.95, n - 2)),
              unit: '',
            },
          ] as const);
    return [
      { name: 'pairs', symbol: 'n', value: n, unit: '' },
      { name: 'slope', value: line.slope, unit: '' },
      { name: 'intercept', value: line.intercept, unit: '' },
      { name: 'residual sum of squares', symbol: 'RSS', value: line.rss, unit: '' },
      {
        name: 'standard error of estimate',
        symbol: 'see',
        rule: '√(RSS/(n − 2))',
        value: errorOfEstimate(line),
        unit: '',
      },
      ...read,
    ];
  },
});
