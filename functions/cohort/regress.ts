import { defineFunction } from '../core/define.ts';
import { numbersIn } from '../core/invoke.ts';
import { issue } from '../core/issue.ts';
import { optionOr, range } from '../core/parameter.ts';
import { definition, published } from '../core/source.ts';
import { columnRange, type Matrix, type Range, rangeOf } from '../core/value.ts';
import { noSpread, tooFew } from '../statistics/few.ts';
import { allEqual } from '../statistics/line.ts';
import { onceForTwo } from '../statistics/memo.ts';
import { regress } from '../statistics/regression.ts';

/** The rows in which y and every x column have a number. */
const completeRows = onceForTwo((y: Range, columns: Range) => {
  const right = numbersIn(y);
  const left = numbersIn(columns);
  const ys: number[] = [];
  const xs: Float64Array[] = [];
  for (let i = 0, j = 0; i < right.at.length; i++) {
    const row = right.at[i]!;
    while (j < left.at.length && left.at[j]! < row * columns.columns) j++;
    let end = j;
    while (end < left.at.length && left.at[end]! < (row + 1) * columns.columns) end++;
    if (end - j !== columns.columns) continue;
    ys.push(right.values[i]!);
    xs.push(left.values.subarray(j, end));
  }
  return { y: Float64Array.from(ys), rows: xs };
});

const fitted = onceForTwo((y: Range, columns: Range) => {
  const complete = completeRows(y, columns);
  return regress(complete.y, complete.rows);
});

const columnOf = (values: readonly number[]): Matrix => ({ rows: values.length, columns: 1, values });

/** COHORT.REGRESS(y, x_columns, [what="coefficients"]): a column (intercept, then slopes) or a number. @throws nothing; too few rows #N/A, collinear columns #NUM!. */
export default defineFunction({
  name: 'COHORT.REGRESS',
  family: 'groups',
  summary: 'Multiple regression: intercept and slopes of several columns, with their errors.',
  searchWords: ['multiple regression', 'least squares', 'several predictors', 'adjusted for'],
  parameters: [
    range('y', 'number', '', 'the measure that is fitted, one column'),
    range('x_columns', 'number', '', 'the columns it is fitted on, side by side'),
    optionOr(
      'coefficients',
      'what',
      ['coefficients', 'se', 'r2', 'see'],
      'intercept and slopes, their standard errors, R², or the standard error of estimate',
    ),
  ],
  result: {
    is: 'column',
    unit: '',
    about: 'intercept first, then a slope for each column, below each other; r2 and see are one number',
    measures: 'unknown',
  },
  rule: 'least squares y = b₀ + b₁x₁ + …, by QR of the centred columns; se from the residuals with n − columns − 1 degrees of freedom',
  sources: [
    definition('least squares'),
    published('Longley 1967, J Am Stat Assoc 62:819–841 (why not the normal equations)'),
  ],
  cautions: ['With few rows for each column the slopes fit the accidents of the data.'],
  notes: [
    'Rows with a blank in any column are left out.',
    'The coefficients need one row more than there are columns, errors two more. A column that is a sum of multiples of the others gives #NUM!.',
  ],
  examples: [
    {
      formula: '=COHORT.REGRESS({5;7;9;14}, {1,1;2,1;3,1;4,2})',
      gives: [[0], [2], [3]],
      says: 'y = 2x₁ + 3x₂',
    },
    { formula: '=COHORT.REGRESS({5;7;9;14}, {1,1;2,1;3,1;4,2}, "r2")', gives: 1 },
    {
      formula: '=COHORT.REGRESS({5;7;9;14}, {1,2;2,4;3,6;4,8})',
      gives: '#NUM!',
      says: 'the second column doubles the first',
    },
  ],
  seeAlso: ['COHORT.FIT', 'COHORT.R'],
  typical: [columnRange(5, 7, 9, 14, 15), rangeOf(5, 2, [1, 1, 2, 1, 3, 1, 4, 2, 5, 2]), 'r2'],
  clash: (y, columns) =>
    y.rows * y.columns === columns.rows
      ? undefined
      : issue('#VALUE!', 'unequal-lengths', {
          parameter: 'x_columns',
          received: columns.rows,
          details: { other: 'y', length: y.rows * y.columns },
        }),
  compute: (y, columns, what) => {
    const complete = completeRows(y, columns);
    const need = columns.columns + (what === 'se' || what === 'see' ? 2 : 1);
    if (complete.rows.length < need) return tooFew('y', complete.rows.length, need, 'complete row');
    if (what === 'r2' && allEqual(complete.y)) return noSpread('y');
    const found = fitted(y, columns);
    if (!found) return issue('#NUM!', 'collinear', { parameter: 'x_columns' });
    if (what === 'r2') return 1 - found.rss / found.tss;
    if (what === 'see') return Math.sqrt(found.rss / found.df);
    return columnOf(what === 'se' ? found.se : found.coefficients);
  },
});
