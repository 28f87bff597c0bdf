/** What built-in functions about kinds of values are called and say. */
import { words } from './family-words.ts';

export const information = words(
  'Kinds of values',
  '6.13, information functions',
  `
ISBLANK(value): TRUE for a blank cell. | empty, missing
ISNUMBER(value): TRUE for a number. | is it a number
ISTEXT(value): TRUE for a text. | is it text
ISNONTEXT(value): TRUE for anything but a text. | not text
ISLOGICAL(value): TRUE for TRUE or FALSE. | is it yes or no
ISERROR(value): TRUE for an error. | is it an error
ISERR(value): TRUE for an error other than #N/A. | is it an error
ISNA(value): TRUE for #N/A. | not found, missing
ISEVEN(number): TRUE for an even number. | even
ISODD(number): TRUE for an odd number. | odd
ISREF(value): TRUE for a reference. | is it a reference
!ISBINARY(text): TRUE for a text of the digits 0 and 1. | binary | ISBINARY("101")
NA(): The error #N/A, for a value that is missing. | missing, not available
N(value): A value as a number; text is 0. | to number
`,
);
