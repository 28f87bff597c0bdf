import { type Issue, issue } from '../../../functions/core/issue.ts';
import { limits } from '../limits.ts';

/** Error values of operators and of the calling of functions, in the cell engine's words. */
const builtIn = (code: Issue['code'], message: string): Issue =>
  issue(code, 'built-in', { details: { message } });

/** Not finite, as the cell engine words it. */
export const notANumber = builtIn('#NUM!', 'NaN or infinite value encountered.');
export const notCoercible = builtIn('#VALUE!', 'Value cannot be coerced to number.');
export const divisionByZero = builtIn('#DIV/0!', '');
export const wrongType = builtIn('#VALUE!', 'Wrong type of argument.');
export const badMode = builtIn('#VALUE!', 'Mode not recognized.');
export const wrongCount = builtIn('#N/A', 'Wrong number of arguments.');
export const noMatch = builtIn('#N/A', '');
/** An array that would have more cells than there is memory for. */
const arrayTooLarge = issue('#VALUE!', 'array-too-large', { details: { most: limits.rangeCells } });
/** A column against a row gives every pair: what is larger than each of them is limited as the cell engine limits it. */
const spreadTooFar = issue('#VALUE!', 'array-too-large', { details: { most: limits.handedCells } });

/** What is wrong with an array that comes from others, the largest of which has `given` cells. */
export function tooManyCells(size: number, given: number): Issue | undefined {
  if (size > limits.rangeCells) return arrayTooLarge;
  return size > given && size > limits.handedCells ? spreadTooFar : undefined;
}

const OUT_OF_ROOM = /call stack|array length|allocation/i;

/** What a fault becomes: a stack that ran over, or an array that finds no memory, says that there were too many cells. */
export function faultOf(error: unknown, reason: 'fault' | 'failed', of?: string): Issue {
  const named = of === undefined ? {} : { function: of };
  if (error instanceof RangeError && OUT_OF_ROOM.test(error.message))
    return issue('#VALUE!', 'too-much-at-once', named);
  return issue('#ERROR!', reason, { ...named, details: { message: String(error) } });
}

export const unknownError = issue('#ERROR!', 'unknown');
