import { type Issue, isIssue } from '../../../../functions/core/issue.ts';
import {
  type Argument,
  isRange,
  type Outcome,
  type Range,
  type Value,
} from '../../../../functions/core/value.ts';
import { type Regression, regress } from '../../../../functions/statistics/regression.ts';
import type { Own, Size } from '../builtin.ts';
import { conditionOf, errorAt, isNumberAt, noData, problem, unequal } from './reading.ts';

/** Columns of numbers beside y: a fit needs every cell. */
interface Data {
  readonly y: Float64Array;
  readonly rows: readonly Float64Array[];
  /** y lies in one row, and so do the variables. */
  readonly across: boolean;
}

/** 1, 2, 3, … where no x is given. */
const counting = (n: number): Float64Array[] => Array.from({ length: n }, (_, i) => Float64Array.of(i + 1));

function numbersOrIssue(name: string, range: Range): Issue | undefined {
  for (let i = 0; i < range.rows * range.columns; i++) {
    const error = errorAt(range, i);
    if (error) return error;
    if (!isNumberAt(range, i)) return problem(name, '#VALUE!', 'Number argument expected.');
  }
  return undefined;
}

/** Rows of the variables: they stand in columns beside a y that stands in a column, in rows below a y in a row. */
function variables(x: Range, n: number, across: boolean): Float64Array[] | undefined {
  if (across) {
    if (x.columns !== n) return undefined;
    return Array.from({ length: n }, (_, i) =>
      Float64Array.from({ length: x.rows }, (_, j) => x.numbers[j * x.columns + i]!),
    );
  }
  if (x.rows !== n && x.columns === n && x.rows === 1)
    return Array.from({ length: n }, (_, i) => Float64Array.of(x.numbers[i]!));
  if (x.rows !== n) return undefined;
  return Array.from({ length: n }, (_, i) => x.numbers.slice(i * x.columns, (i + 1) * x.columns));
}

function dataOf(name: string, y: Argument, x: Argument): Data | Issue {
  if (isIssue(y)) return y;
  if (!isRange(y)) return noData(name);
  const n = y.rows * y.columns;
  const wrongY = numbersOrIssue(name, y);
  if (wrongY) return wrongY;
  const across = y.rows === 1 && y.columns > 1;
  if (x === undefined || x === null) return { y: y.numbers.slice(0, n), rows: counting(n), across };
  if (isIssue(x)) return x;
  if (!isRange(x)) return unequal(name);
  const wrongX = numbersOrIssue(name, x);
  if (wrongX) return wrongX;
  const rows = variables(x, n, across);
  return rows ? { y: y.numbers.slice(0, n), rows, across } : unequal(name);
}

function fitOf(name: string, { y, rows }: Data, withConstant: boolean): Regression | Issue {
  const p = rows[0]?.length ?? 0;
  if (y.length < p + (withConstant ? 1 : 0)) return noData(name);
  return regress(y, rows, withConstant) ?? problem(name, '#NUM!', 'All x values are equal.');
}

const missing = (name: string): Issue => problem(name, '#N/A', 'Value not found.');
const orMissing = (name: string, value: number): Value => (Number.isFinite(value) ? value : missing(name));

const variablesIn = ([y, x]: readonly Size[]): number =>
  !x || x.rows * x.columns <= 1 ? 1 : y && y.rows === 1 && y.columns > 1 ? x.rows : x.columns;

/**
 * OpenFormula, statistical functions, LINEST: slopes from the last variable to the first, then the constant; with
 * `statistics` four rows more (errors; R² and error of estimate; F and degrees of freedom; sums of squares).
 */
export const linest: Own = {
  minArgs: 1,
  maxArgs: 4,
  size: (args) => ({ rows: args.length > 3 ? 5 : 1, columns: variablesIn(args) + 1 }),
  compute([y, x, constant, statistics]): Outcome {
    const name = 'LINEST';
    const withConstant = conditionOf(name, constant, true);
    if (isIssue(withConstant)) return withConstant;
    const withStatistics = conditionOf(name, statistics, false);
    if (isIssue(withStatistics)) return withStatistics;
    const data = dataOf(name, y, x);
    if (isIssue(data)) return data;
    const fit = fitOf(name, data, withConstant);
    if (isIssue(fit)) return fit;
    const p = fit.coefficients.length - 1;
    const values: Value[] = fit.coefficients.toReversed();
    if (!withStatistics) return { rows: 1, columns: p + 1, values };
    const fill = (row: readonly Value[]): Value[] => [
      ...row,
      ...new Array(p + 1 - row.length).fill(missing(name)),
    ];
    const model = fit.tss - fit.rss;
    values.push(
      ...fit.se.toReversed().map((e) => orMissing(name, e)),
      ...fill([orMissing(name, model / fit.tss), orMissing(name, Math.sqrt(fit.rss / fit.df))]),
      ...fill([orMissing(name, model / p / (fit.rss / fit.df)), fit.df]),
      ...fill([model, fit.rss]),
    );
    return { rows: 5, columns: p + 1, values };
  },
};

/** OpenFormula, statistical functions, TREND: the least-squares fit at new values of the variables. */
export const trend: Own = {
  minArgs: 1,
  maxArgs: 4,
  size: ([y, x, at]) => {
    const shape = at && at.rows * at.columns > 0 ? at : (x ?? y!);
    const p = variablesIn([y!, ...(x ? [x] : [])]);
    if (p === 1) return shape;
    return y!.rows === 1 && y!.columns > 1
      ? { rows: 1, columns: shape.columns }
      : { rows: shape.rows, columns: 1 };
  },
  compute([y, x, at, constant]): Outcome {
    const name = 'TREND';
    const withConstant = conditionOf(name, constant, true);
    if (isIssue(withConstant)) return withConstant;
    const data = dataOf(name, y, x);
    if (isIssue(data)) return data;
    const fit = fitOf(name, data, withConstant);
    if (isIssue(fit)) return fit;
    const [intercept, ...slopes] = fit.coefficients;
    const fitted = (row: ArrayLike<number>): number =>
      slopes.reduce((sum, b, j) => sum + b * row[j]!, intercept!);
    if (at === undefined || at === null) {
      const values = data.rows.map(fitted);
      return data.across
        ? { rows: 1, columns: values.length, values }
        : { rows: values.length, columns: 1, values };
    }
    if (isIssue(at)) return at;
    if (!isRange(at)) return typeof at === 'number' ? fitted([at]) : unequal(name);
    const wrong = numbersOrIssue(name, at);
    if (wrong) return wrong;
    if (slopes.length === 1)
      return { rows: at.rows, columns: at.columns, values: Array.from(at.numbers, (v) => fitted([v])) };
    const rows = variables(at, data.across ? at.columns : at.rows, data.across);
    if (!rows || rows[0]?.length !== slopes.length) return unequal(name);
    const values = rows.map(fitted);
    return data.across
      ? { rows: 1, columns: values.length, values }
      : { rows: values.length, columns: 1, values };
  },
};
