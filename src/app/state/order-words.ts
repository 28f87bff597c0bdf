/** The words for the two directions of sorting, by kind of column. */
import type { ColumnKind } from '../../book/model.ts';

const directions: Readonly<Record<ColumnKind, readonly [up: string, down: string]>> = {
  number: ['low to high', 'high to low'],
  text: ['A to Z', 'Z to A'],
  choice: ['A to Z', 'Z to A'],
  date: ['oldest to newest', 'newest to oldest'],
  'yes-no': ['no to yes', 'yes to no'],
};

/** The order of a sort in words, as the values of the column read. */
export const orderInWords = (kind: ColumnKind = 'number', descending = false): string =>
  directions[kind][descending ? 1 : 0];
