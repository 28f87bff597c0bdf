import { type ErrorCode, type Issue, isIssue, issue } from '../../../../functions/core/issue.ts';
import { type Argument, isRange, Kind, type Range, valueAt } from '../../../../functions/core/value.ts';
import { numberInText } from '../../ranges/criteria.ts';
import { numbersOf } from '../../ranges/sorted-ranges.ts';

/** An error value of a built-in function; the message says which sentence. */
export const problem = (name: string, code: ErrorCode, message: string): Issue =>
  issue(code, 'built-in', { function: name, details: { message } });

export const notFound = (name: string): Issue => problem(name, '#N/A', 'Value not found.');
export const unequal = (name: string): Issue => problem(name, '#N/A', 'Ranges need to be of equal length.');
export const noData = (name: string): Issue => problem(name, '#NUM!', 'Needs at least one value.');
export const divided = (name: string): Issue => problem(name, '#DIV/0!', '');

/** One number: a blank is 0, yes/no 1 or 0, a text the number it stands for. `otherwise` for an argument left out. */
export function numberOf(name: string, arg: Argument, otherwise?: number): number | Issue {
  if (arg === undefined && otherwise !== undefined) return otherwise;
  if (arg === undefined || arg === null || arg === '') return 0;
  if (typeof arg === 'number') return arg;
  if (typeof arg === 'boolean') return arg ? 1 : 0;
  if (typeof arg === 'string')
    return numberInText(arg) ?? problem(name, '#VALUE!', 'Value cannot be coerced to number.');
  if (isIssue(arg)) return arg;
  return problem(name, '#VALUE!', 'Cell range not allowed.');
}

/** A yes or no. */
export function conditionOf(name: string, arg: Argument, otherwise: boolean): boolean | Issue {
  if (arg === undefined) return otherwise;
  if (typeof arg === 'boolean') return arg;
  if (typeof arg === 'string' && /^(true|false)$/i.test(arg)) return arg.length === 4;
  const number = numberOf(name, arg);
  return isIssue(number) ? number : number !== 0;
}

/** The numbers of a range, or of one value; text, blanks and yes/no in a range are left out. */
export function numbersIn(name: string, arg: Argument): Float64Array | Issue {
  if (isRange(arg)) return numbersOf(arg);
  const number = numberOf(name, arg);
  return isIssue(number) ? number : Float64Array.of(number);
}

/** Pairs of numbers that stand at the same place of two ranges; places where either has none are left out. */
export function pairsIn(
  name: string,
  y: Argument,
  x: Argument,
): { readonly y: Float64Array; readonly x: Float64Array } | Issue {
  if (!isRange(y) || !isRange(x))
    return firstIssue([y, x]) ?? problem(name, '#VALUE!', 'Cell range expected.');
  const size = y.rows * y.columns;
  if (x.rows * x.columns !== size) return unequal(name);
  const ys: number[] = [];
  const xs: number[] = [];
  for (let i = 0; i < size; i++) {
    const error = errorAt(y, i) ?? errorAt(x, i);
    if (error) return error;
    if (!isNumberAt(y, i) || !isNumberAt(x, i)) continue;
    ys.push(y.numbers[i]!);
    xs.push(x.numbers[i]!);
  }
  return { y: Float64Array.from(ys), x: Float64Array.from(xs) };
}

export const isNumberAt = (range: Range, i: number): boolean =>
  range.kinds[i] === Kind.number || range.kinds[i] === Kind.date;

export function errorAt(range: Range, i: number): Issue | undefined {
  const value = range.kinds[i] === Kind.error ? valueAt(range, i) : null;
  return isIssue(value) ? value : undefined;
}

/** The first error value among arguments that are no ranges. */
const firstIssue = (args: readonly Argument[]): Issue | undefined => args.find(isIssue);
