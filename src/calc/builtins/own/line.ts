/** INTERCEPT and FORECAST: the least-squares line of two columns. */
import { type Issue, isIssue } from '../../../../functions/core/issue.ts';
import { type Argument, isRange, type Outcome, type Range } from '../../../../functions/core/value.ts';
import { type Line, lineThrough } from '../../../../functions/statistics/line.ts';
import type { Own } from '../builtin.ts';
import { divided, numberOf, pairsIn } from './reading.ts';

const lines = new WeakMap<Range, { readonly x: Range; readonly line: Line | Issue }>();

/** The least-squares line of two columns, computed once for the columns. */
function lineOf(name: string, y: Argument, x: Argument): Line | Issue {
  const known = isRange(y) ? lines.get(y) : undefined;
  if (known && known.x === x) return known.line;
  const pairs = pairsIn(name, y, x);
  const line = isIssue(pairs) ? pairs : through(name, pairs.y, pairs.x);
  if (isRange(y) && isRange(x)) lines.set(y, { x, line });
  return line;
}

function through(name: string, y: Float64Array, x: Float64Array): Line | Issue {
  if (y.length < 2) return divided(name);
  const line = lineThrough({ a: x, b: y, n: y.length });
  return line.sxx === 0 ? divided(name) : line;
}

/** OpenFormula, statistical functions, INTERCEPT: where the least-squares line meets x = 0. */
export const intercept: Own = {
  minArgs: 2,
  maxArgs: 2,
  compute: ([y, x]): Outcome => {
    const line = lineOf('INTERCEPT', y, x);
    return isIssue(line) ? line : line.intercept;
  },
};

/** OpenFormula, statistical functions, FORECAST: the least-squares line at one x. */
export const forecast: Own = {
  minArgs: 3,
  maxArgs: 3,
  compute: ([given, y, x], name): Outcome => {
    const at = numberOf(name, given);
    if (isIssue(at)) return at;
    const line = lineOf(name, y, x);
    return isIssue(line) ? line : line.intercept + line.slope * at;
  },
};
