import { type Issue, issue } from '../../../functions/core/issue.ts';

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
export const unknownError = issue('#ERROR!', 'unknown');
