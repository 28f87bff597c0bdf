import { got, of, remedyOr, type Sentences, unitOf, where } from './wording.ts';

/** What can be wrong with an argument before any kernel runs, and with data in general. */
export const argumentSentences: Sentences = {
  'blank-argument': (i) =>
    `${of(i)} is blank; it needs ${i.expected}.${remedyOr(i, 'Fill the cell it refers to.')}`,
  'wrong-kind': (i) =>
    `${of(i)} got ${got(i)}; it accepts ${i.expected}.${remedyOr(i, 'Change the cell or the word.')}`,
  'many-cells': (i) =>
    `${of(i)} got ${i.received} cells at once; it accepts one value: ${i.expected}. Refer to one cell, or to this row’s value.`,
  'out-of-bounds': (i) =>
    `${of(i)} got ${got(i)}${where(i)}; it accepts ${i.expected}${unitOf(i)}.${i.remedy ? ` ${i.remedy}` : ''} Check the value and its unit.`,
  'not-whole': (i) => `${of(i)} got ${got(i)}; it accepts ${i.expected}.${remedyOr(i, 'Round it.')}`,
  'zero-divisor': (i) =>
    `${of(i)} is 0, and nothing can be divided by it.${remedyOr(i, 'Check the cell it refers to.')}`,
  'too-few-arguments': (i) =>
    `${i.function} got ${i.details?.count} arguments; it needs at least ${i.details?.required}. Add the ones that are missing.`,
  'too-many-arguments': (i) =>
    `${i.function} got ${i.details?.count} arguments; it takes at most ${i.details?.most}. Remove the last ones.`,
  'unequal-lengths': (i) =>
    `${of(i)} has ${i.received} cells, "${i.details?.other}" has ${i.details?.length}; they belong together row by row. Choose columns of one sheet.`,
  'wrong-cell': (i) =>
    `${of(i)} holds ${got(i)}${where(i)}; it accepts ${i.expected} and blanks. Correct that cell or clear it.`,
  'no-spread': (i) =>
    `${of(i)} has no spread: all its values are equal, and nothing can be divided by it.${remedyOr(i, 'Add values that differ.')}`,
  'not-finite': (i) =>
    `${i.function} came to no finite number with these values; it accepts ones whose result can be written as a number. Check them and their units.`,
  fault: (i) =>
    `${i.function} failed on these values (${i.details?.message}). This is a fault of the program; please report it.`,
};
