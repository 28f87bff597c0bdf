import type { Issue } from '../../functions/core/issue.ts';

/** What went wrong in an operator or a built-in function, by the message that the cell engine gives it. */
const reasons: Readonly<Record<string, string>> = {
  'Value cannot be coerced to number.': 'it got a text where it needs a number',
  'Number argument expected.': 'it got something other than a number',
  'Wrong type of argument.': 'an argument is of the wrong kind',
  'Wrong number of arguments.': 'it has too few or too many arguments',
  'Empty function argument.': 'an argument is left out that it needs',
  'Value too small.': 'a number is smaller than it accepts',
  'Value too large.': 'a number is larger than it accepts',
  'Too large to compute.': 'a number is larger than it can compute with',
  'Wrong order of values.': 'its numbers are in the wrong order',
  'End period needs to be at least start period.': 'the last period is before the first',
  'Value needs to be an integer.': 'it needs a whole number',
  'NaN or infinite value encountered.': 'the result is no finite number',
  'The density is infinite.': 'the density is infinite at 0 with so few degrees of freedom',
  'Value not found.': 'the value looked for is not there',
  'Pattern not found.': 'the text looked for is not there',
  'Cell range expected.': 'it needs a range of cells',
  'Cell reference expected.': 'it needs a cell or a column, not a value',
  'Cell range not allowed.': 'it got a range where it needs one value',
  'Wrong range dimension.': 'a range has the wrong shape',
  'Array dimensions are not compatible.': 'the arrays differ in shape',
  'Array dimensions mismatched.': 'the arrays differ in shape',
  'Ranges need to be of equal length.': 'the ranges differ in length',
  'Range needs to contain at least two elements.': 'it needs at least two values',
  'Range needs to contain at least three elements.': 'it needs at least three values',
  'Needs at least one value.': 'there is no value to work on',
  'Empty range not allowed.': 'the range holds nothing to work on',
  'All x values are equal.': 'all values of x are equal',
  'Index out of bounds.': 'the position lies outside of the range',
  'Index too large.': 'the position lies outside of the range',
  'None of the conditions were met.': 'none of its conditions holds',
  'Selector cannot exceed the number of arguments.': 'the choice asked for is none of those given',
  'No default option.': 'no case fits and there is no default',
  'Incorrect criterion.': 'its criterion cannot be read',
  'Invalid date.': 'that is not a date',
  'Date outside of bounds.': 'the date lies outside of the calendar it knows',
  'String does not represent correct DateTime.': 'the text is not a date; dates are written 2024-05-17',
  'Length cannot be negative.': 'a length is negative',
  'Value cannot be negative.': 'a number is negative',
  'Argument cannot be 0.': 'an argument is 0',
  'Result exceeds the maximum allowed length.': 'the text would be too long',
  'Mode not recognized.': 'its mode is none that it knows',
  'Resulting reference is out of the sheet.': 'it leads outside of the sheet',
};

/** What an error code says when nothing closer is known. */
const codes: Readonly<Record<string, string>> = {
  '#DIV/0!': 'something is divided by 0 or by a blank',
  '#N/A': 'there is no value to give',
  '#NUM!': 'a number is outside of what it accepts',
  '#VALUE!': 'a value is of the wrong kind',
  '#REF!': 'it leads to no cell',
  '#NAME?': 'a name is not known',
  '#SPILL!': 'the result has no room',
  '#CYCLE!': 'the value depends on itself',
  '#ERROR!': 'it failed',
};

/** What to do about it, where there is something better to say than to look at the values. */
const remedies: Readonly<Record<string, string>> = {
  'Wrong number of arguments.': 'Look its arguments up and add or take out some.',
  'Empty function argument.': 'Fill it in.',
  'The density is infinite.': 'Ask for a value above 0, or for the probability (TRUE).',
  'Value not found.': 'Check its spelling, or catch this case with IFNA.',
  'Pattern not found.': 'Check its spelling, or catch this case with IFERROR.',
  'Ranges need to be of equal length.': 'Choose ranges of the same rows.',
  'Array dimensions are not compatible.': 'Choose ranges of the same shape.',
  'Wrong range dimension.': 'Choose ranges of the same shape.',
  'Selector cannot exceed the number of arguments.': 'Add that choice or change the number.',
  'Index out of bounds.': 'Count the rows and columns of the range.',
  'Index too large.': 'Count the rows and columns of the range.',
  'Incorrect criterion.': 'Criteria look like ">40", "<>x" or a value.',
  'None of the conditions were met.': 'Add a last pair TRUE, value.',
  'No default option.': 'Add a last argument for all other cases.',
};
const remediesByCode: Readonly<Record<string, string>> = {
  '#DIV/0!': 'Check the divisor, or catch this case with IFERROR.',
  '#N/A': 'Fill the cells it refers to, or catch this case with IFNA.',
};

/** The sentence of an error that an operator or a built-in function gave: what went wrong, and what to do. */
export function builtInSentence(i: Issue): string {
  const message = String(i.details?.message ?? '');
  const what = reasons[message] ?? codes[i.code] ?? 'it failed';
  const told = what.startsWith('it ') && !i.function ? what.replace(/^it /, 'the formula ') : what;
  const sentence = `${i.function ? `${i.function}: ` : ''}${told}.`;
  const remedy = remedies[message] ?? remediesByCode[i.code] ?? 'Check the values that the formula reads.';
  return `${sentence[0]!.toUpperCase()}${sentence.slice(1)} ${remedy}`;
}
