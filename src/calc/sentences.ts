/** The sentences of errors in formulas. */
import { type Issue, issue } from '../../functions/core/issue.ts';
import { functionSentences } from '../../functions/core/sentence.ts';
import type { ErrorNode } from './ast.ts';
import { builtInSentence } from './built-in-sentences.ts';

const perhaps = (i: Issue): string => (i.expected ? ` Did you mean ${i.expected}?` : '');
const most = (i: Issue): string => Number(i.details?.most).toLocaleString('en');
const word = (i: Issue): string => `"${i.received}"`;

/** What is done to two values, for a sentence. */
function doing(operator: string): string {
  if (operator === '+') return 'adding';
  if (operator === '-') return 'subtracting';
  return /^[A-Z]/.test(operator) ? `taking ${operator} of` : 'comparing';
}

/** A sentence for each reason that only the formula language knows. */
export const calcSentences: Readonly<Record<string, (i: Issue) => string>> = {
  // Reading
  unfinished: (i) =>
    `The formula ends where ${i.expected} is expected. Go on typing, or take out the last sign.`,
  unexpected: (i) => `${word(i)} is where ${i.expected} is expected (character ${i.details?.at}).`,
  'unknown-character': (i) =>
    i.expected
      ? `${i.received} is no sign of the formula language; write ${i.expected} instead.`
      : `${i.received} is no sign of the formula language. Take it out.`,
  'open-text': () => 'This text has no closing ". Add one; a " inside a text is written twice.',
  'number-with-letters': (i) =>
    `${word(i)} is a number with letters. Formulas carry no units: write ${i.expected}, in the unit of the column.`,
  'number-too-large': (i) => `${i.received} is too large for a number; the largest is about 1.8e308.`,
  'stray-dollar': (i) => `${word(i)} has a $; that goes only with the address of a cell, such as $B$7.`,
  'range-of-names': (i) =>
    `"${i.received}:" cannot start a range: ranges are written with addresses, such as B2:B9, and a whole column with its sheet, such as roster.femur.`,
  'dotted-name': (i) =>
    `${word(i)} is not a name. A column of another sheet is written sheet.column, such as roster.femur; a function has "(" behind its name.`,
  'cell-after-dot': (i) => `${word(i)} mixes two ways of writing; a cell of another sheet is ${i.expected}.`,
  'sheet-name': (i) => `${word(i)} cannot be the name of a sheet.`,
  'name-after-mark': (i) =>
    `${word(i)} mixes two ways of writing; a column of another sheet is ${i.expected}.`,
  'no-such-address': (i) =>
    `${word(i)} reads as the address of a cell, and no sheet has such a cell: rows count from 1 to ${Number(i.details?.rows).toLocaleString('en')}.`,
  semicolon: (i) => `Arguments of ${i.function} are separated by a comma, not by a semicolon.`,
  'uneven-array': () =>
    'The rows of this array differ in length; each row between ";" needs the same number of values.',
  'array-constant': () =>
    'An array in braces holds numbers, texts, TRUE, FALSE and error values, nothing computed.',
  // Limits
  'formula-too-long': (i) =>
    `The formula has ${Number(i.received).toLocaleString('en')} characters; at most ${most(i)} are accepted. Split it over several columns or cells.`,
  'too-deep': (i) =>
    `Parentheses and functions are more than ${most(i)} deep inside one another. Split the formula over several columns or cells.`,
  'too-many-operators': (i) =>
    `More than ${most(i)} operators follow one another. Use SUM, CONCAT or several columns.`,
  'too-many-written': (i) => `${i.function} has more than ${most(i)} arguments. Hand over a range instead.`,
  'text-too-long': (i) => `A text would have more than ${most(i)} characters. Shorten it.`,
  'array-too-large': (i) => `An array would have more than ${most(i)} cells. Ask for a smaller one.`,
  'range-too-large': (i) =>
    `A range has at most ${most(i)} cells. Name the columns that are meant, such as roster.femur.`,
  'too-many-cells': (i) =>
    `The function takes at most ${most(i)} cells at once; here are ${Number(i.received).toLocaleString('en')}. Take fewer rows first, for example with FILTER.`,
  'too-much-at-once': (i) =>
    `${i.function ?? 'The formula'} cannot take so many cells at once. Take fewer rows first, for example with FILTER.`,
  // Names
  'unknown-name': (i) =>
    `There is no column or setting called ${word(i)}${i.details?.sheet ? ` for the sheet ${i.details.sheet}` : ''}.${perhaps(i)}`,
  'unknown-function': (i) => `There is no function called ${i.received}.${perhaps(i)}`,
  'unknown-sheet': (i) => `There is no sheet called ${word(i)}.${perhaps(i)}`,
  'unknown-column': (i) => `The sheet ${i.details?.sheet} has no column called ${word(i)}.${perhaps(i)}`,
  'name-of-sheet': (i) =>
    `${word(i)} is a sheet; a whole column of it is written ${i.received}.${i.expected ?? 'column'}.`,
  'no-sheet-here': (i) => `${word(i)} needs a sheet in front of it here, such as sheet!B7.`,
  'beyond-columns': (i) =>
    `${word(i)} lies beyond the last column of the sheet ${i.details?.sheet}, which is ${i.details?.last}.`,
  'lost-reference': (i) =>
    `This formula used ${word(i)}, which was deleted. Undo the deletion or write another name in its place.`,
  'written-error': (i) => `The formula itself says ${i.code}.`,
  'not-offered': (i) => `${i.function} is not offered: ${i.expected}.`,
  'column-of-what': () =>
    'COLUMN needs a cell or a column; columns have names here, and the formula can use them.',
  'let-name': () =>
    'LET takes pairs of a name and a value, and what is computed with them last: LET(x, femur/tibia, x*x). A name is made of letters, digits and _.',
  'offset-fixed': () =>
    'OFFSET needs a cell or a range first, and then numbers written out, so that the cells it reads are known beforehand. INDEX takes computed numbers.',
  'offset-outside': () => 'OFFSET leads to no cell of the sheet.',
  // Values
  cycle: (i) => `This value depends on itself: ${i.details?.path}. Break the circle at one of these places.`,
  'array-in-row': (i) =>
    `A column's formula gives one value a row, and this one gives ${i.details?.rows} × ${i.details?.columns}. Take one of them with INDEX, or one figure of all with a function such as SUM.`,
  'spill-outside': (i) =>
    `The result takes ${i.details?.rows} rows and ${i.details?.columns} columns, more than the sheet has from here. Add rows or columns.`,
  'spill-blocked': (i) =>
    `The result takes ${i.details?.rows} rows and ${i.details?.columns} columns from here, and ${i.received} is in the way. Clear it or move the formula.`,
  failed: (i) =>
    `The formula failed on these values (${i.details?.message}). This is a fault of the program; please report it.`,
  hung: () => 'This formula took too long and was stopped. Change it to have it computed again.',
  unknown: () =>
    'This value is an error whose reason was lost. This is a fault of the program; please report it.',
  'built-in': builtInSentence,
  // Doubts
  'mixed-dimensions': (i) =>
    `${i.received} is ${i.details?.first}, ${i.expected} is ${i.details?.second}; ${doing(String(i.details?.doing))} them gives a figure that measures nothing. Check which columns are meant.`,
  'wrong-dimension': (i) =>
    `${i.received} is ${i.details?.got}; "${i.parameter}" of ${i.function} is ${i.details?.wanted}. Check which column is meant.`,
  'column-dimension': (i) =>
    `The formula of ${i.received} gives ${i.details?.got}; the column is said to be ${i.details?.wanted}. Change one of the two.`,
  'zero-from-blank': (i) => `0 comes from a blank: ${i.received} is blank and counts as 0 here.`,
  'slow-column': (i) =>
    `${i.received} is slow: ${i.function} works through a whole column again in each of its ${Number(i.details?.rows).toLocaleString('en')} rows. A column that holds that part once is quicker.`,
  'cell-by-cell': (i) =>
    `${i.received} is computed cell by cell because its rows lean on one another; ${Number(i.details?.rows).toLocaleString('en')} rows take their time.`,
};

/** The one place where an error value becomes a sentence. */
export function sentenceOf(of: Issue): string {
  const render = functionSentences[of.reason] ?? calcSentences[of.reason];
  return render ? render(of) : `${of.code}: ${of.reason}.`;
}

/** The error value of an error that a formula holds. */
export function issueOf(node: ErrorNode): Issue {
  if (node.issue) return node.issue;
  if (node.lost !== undefined) return issue('#REF!', 'lost-reference', { received: node.lost });
  return issue(node.code, 'written-error');
}
