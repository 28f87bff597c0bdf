import type { Issue } from './issue.ts';
import { dataSentences } from './sentence-data.ts';

const of = (i: Issue): string =>
  i.parameter ? `"${i.parameter}" of ${i.function}` : (i.function ?? 'This function');
const got = (i: Issue): string => {
  if (i.received === undefined) return 'nothing';
  if (typeof i.received === 'boolean') return i.received ? 'TRUE' : 'FALSE';
  return typeof i.received === 'string' ? `"${i.received}"` : `${i.received}${i.unit ? ` ${i.unit}` : ''}`;
};
const then = (i: Issue, otherwise: string): string => ` ${i.remedy ?? otherwise}`;

/** A sentence for each reason that a function can give. Nobody else words an error of a function. */
export const functionSentences: Readonly<Record<string, (i: Issue) => string>> = {
  ...dataSentences,
  'blank-argument': (i) =>
    `${of(i)} is blank; it needs ${i.expected}.${then(i, 'Fill the cell it refers to.')}`,
  'wrong-kind': (i) =>
    `${of(i)} got ${got(i)}; it accepts ${i.expected}.${then(i, 'Change the cell or the word.')}`,
  'out-of-bounds': (i) =>
    `${of(i)} got ${got(i)}; it accepts ${i.expected}${i.unit ? ` ${i.unit}` : ''}.${then(i, 'Check the value and its unit.')}`,
  'not-whole': (i) => `${of(i)} got ${got(i)}; it accepts ${i.expected}.${then(i, 'Round it.')}`,
  'zero-divisor': (i) =>
    `${of(i)} is 0, and nothing can be divided by it.${then(i, 'Check the cell it refers to.')}`,
  'too-few-arguments': (i) =>
    `${i.function} got ${i.details?.count} arguments; it needs at least ${i.details?.required}. Add the ones that are missing.`,
  'too-many-arguments': (i) =>
    `${i.function} got ${i.details?.count} arguments; it takes at most ${i.details?.most}. Take out the last ones.`,
  'unequal-lengths': (i) =>
    `${of(i)} has ${i.received} cells, "${i.details?.other}" has ${i.details?.length}; they belong together row by row. Choose columns of one sheet.`,
  'wrong-cell': (i) =>
    `${of(i)} holds ${got(i)} in its row ${i.details?.row}; it accepts ${i.expected} and blanks. Correct that cell or clear it.`,
  'too-little-data': (i) =>
    `${of(i)} has too little data: ${got(i)}; it needs ${i.expected}.${then(i, 'Add rows, or widen the range.')}`,
  'no-spread': (i) =>
    `${of(i)} has no spread: all its values are equal, and nothing can be divided by it.${then(i, 'Add values that differ.')}`,
  'not-finite': (i) =>
    `${i.function} came to no finite number with these values. Check them and their units.`,
  fault: (i) =>
    `${i.function} failed on these values (${i.details?.message}). This is a fault of the program; please report it.`,
};
