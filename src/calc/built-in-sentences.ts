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
  'Value needs to be an integer.': 'it needs a whole number',
  'NaN or infinite value encountered.': 'the result is no finite number',
  'Value not found.': 'the value looked for is not there',
  'Pattern not found.': 'the text looked for is not there',
  'Cell range expected.': 'it needs a range of cells',
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
  'No default option.': 'no case fits and there is no default',
  'Incorrect criterion.': 'its criterion cannot be read',
  'Invalid date.': 'that is no date',
  'Date outside of bounds.': 'the date lies outside of the calendar it knows',
  'String does not represent correct DateTime.': 'the text is no date; dates are written 2024-05-17',
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

export function builtInSentence(i: Issue): string {
  const what = reasons[String(i.details?.message ?? '')] ?? codes[i.code] ?? 'it failed';
  const told = what.startsWith('it ') && !i.function ? what.replace(/^it /, 'the formula ') : what;
  const sentence = `${i.function ? `${i.function}: ` : ''}${told}.`;
  return sentence[0]!.toUpperCase() + sentence.slice(1);
}
