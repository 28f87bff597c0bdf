import { CellError, type FunctionArgument } from 'hyperformula';
import { isIssue, issue } from '../../../../functions/core/issue.ts';
import {
  type Argument,
  isMatrix,
  isRange,
  type Outcome,
  type Range,
  rangeOf,
  type Value,
  valueAt,
} from '../../../../functions/core/value.ts';
import { cellEngine } from '../../cell-engine/engine.ts';
import { type Inner, isRich, issueOfError } from '../../cell-engine/values.ts';
import { type Callee, coerceAt, defaultOf, parametersOf, wrong } from '../../plan/arguments.ts';
import { wrongCount, wrongType } from '../../plan/problems.ts';
import { singleVector } from '../../plan/vector.ts';
import { conditional } from '../../ranges/conditional.ts';
import { isCellOf, lookups } from '../../ranges/range-lookup.ts';
import type { Own } from '../builtin.ts';

/** Calls a body over ranges with raw arguments, coerced by the parameters of a function of the cell engine. */
function callBody(
  name: string,
  like: string,
  run: (...args: never[]) => unknown,
  args: readonly Argument[],
): Outcome | null {
  const callee: Callee = { ...cellEngine().body(like)!, name, run: run as Callee['run'], typedRanges: true };
  const parameters = parametersOf(callee, args.length);
  if (!parameters) return wrongCount;
  const handed: unknown[] = [];
  for (let k = 0; k < parameters.length; k++) {
    const value = coerce(callee, parameters[k]!, args, k);
    if (value === wrong) return wrongType;
    if (value instanceof CellError && parameters[k]!.argumentType !== 'SCALAR')
      return issueOfError(value, name);
    handed.push(value);
  }
  return outcomeOf(callee.run(...handed), name);
}

function coerce(callee: Callee, parameter: FunctionArgument, args: readonly Argument[], k: number): unknown {
  const arg = args[k];
  if (
    k >= args.length ||
    (arg === undefined && parameter.defaultValue !== undefined && parameter.emptyAsDefault)
  )
    return defaultOf(callee, parameter);
  const given = arg ?? null;
  if (isRange(given))
    return parameter.argumentType === 'RANGE'
      ? given
      : given.kinds.length === 1
        ? coerceAt(callee, parameter, singleVector(valueAt(given, 0)), 0)
        : wrong;
  return coerceAt(callee, parameter, singleVector(given), 0);
}

function outcomeOf(result: unknown, name: string): Outcome | null {
  if (isCellOf(result)) return valueAt(result.range, result.at);
  if (isMatrix(result) || isIssue(result)) return result;
  const inner = result as Inner;
  if (inner instanceof CellError) return issueOfError(inner, name);
  if (isRich(inner)) return inner.val;
  if (typeof inner === 'symbol' || inner === undefined) return null;
  return inner as number | string | boolean;
}

/** With an array where one value is asked for, a function is called for each cell of it and answers an array. */
function callForEach(
  name: string,
  like: string,
  run: (...args: never[]) => unknown,
  args: readonly Argument[],
): Outcome | null {
  const parameters = parametersOf(cellEngine().body(like)!, args.length);
  const isArray = (arg: Argument, k: number): arg is Range =>
    isRange(arg) && arg.rows * arg.columns > 1 && parameters?.[k]?.argumentType !== 'RANGE';
  const arrays = args.filter(isArray);
  if (!parameters || arrays.length === 0) return callBody(name, like, run, args);
  const rows = Math.max(...arrays.map((array) => array.rows));
  const columns = Math.max(...arrays.map((array) => array.columns));
  const values: Value[] = [];
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const cell = args.map((arg, k) => (isArray(arg, k) ? cellOf(arg, row, column) : arg));
      const answer = callBody(name, like, run, cell);
      values.push(isMatrix(answer) ? null : answer);
    }
  return { rows, columns, values };
}

/** The cell of an array, one row or column of which stands for all; blank where it has none. */
function cellOf(array: Range, row: number, column: number): Value {
  const r = array.rows === 1 ? 0 : row;
  const c = array.columns === 1 ? 0 : column;
  return r < array.rows && c < array.columns ? valueAt(array, r * array.columns + c) : null;
}

/** The cell engine's own look for the place of a range in a grid, or search sorted ranges one cell after the other. */
const lookup = (run: (...args: never[]) => unknown, minArgs: number, maxArgs: number): Own => ({
  minArgs,
  maxArgs,
  compute: (args, name) => callForEach(name, name, run, args),
});

export const xlookup: Own = {
  minArgs: 3,
  maxArgs: 6,
  size: ([, range, answers]) =>
    range!.columns === 1 ? { rows: 1, columns: answers!.columns } : { rows: answers!.rows, columns: 1 },
  compute: (args) => callBody('XLOOKUP', 'XLOOKUP', lookups.xlookup as (...args: never[]) => unknown, args),
};

/** Like MATCH, with the modes of XLOOKUP. */
export const xmatch: Own = {
  minArgs: 2,
  maxArgs: 4,
  compute([key, range, match, search]) {
    if (isIssue(range)) return range;
    const cells = isRange(range) ? range : rangeOf(1, 1, [range ?? null]);
    if (cells.rows > 1 && cells.columns > 1)
      return issue('#VALUE!', 'built-in', {
        function: 'XMATCH',
        details: { message: 'Wrong range dimension.' },
      });
    const places = rangeOf(
      cells.rows,
      cells.columns,
      Array.from({ length: cells.rows * cells.columns }, (_, i) => i + 1),
    );
    const args: Argument[] = [key, cells, places, undefinedAsMissing, match ?? 0, search ?? 1];
    return callBody('XMATCH', 'XLOOKUP', lookups.xlookup as (...args: never[]) => unknown, args);
  },
};
/** What XLOOKUP takes as "say #N/A". */
const undefinedAsMissing = 'NA';

/** OpenFormula, statistical functions, AVERAGEIFS: mean of the values whose cells meet all criteria. */
export const averageIfs: Own = {
  minArgs: 3,
  maxArgs: 255,
  compute: (args) =>
    callBody('AVERAGEIFS', 'SUMIFS', conditional.averageIfs as (...args: never[]) => unknown, args),
};

export const match = lookup(lookups.match, 2, 3);
export const vlookup = lookup(lookups.vlookup, 3, 4);
export const hlookup = lookup(lookups.hlookup, 3, 4);
