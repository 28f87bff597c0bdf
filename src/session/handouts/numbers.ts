import type { Book, Sheet } from '../../book/model.ts';
import { nameKey } from '../../book/names.ts';
import { MEASURING_ERROR } from '../figure.ts';
import type { NumberLine } from './settings.ts';

const usualNumbers: readonly (readonly [column: string, of: 'tape' | 'ankle' | 'lean' | null])[] = [
  ['stature', null],
  ['mass', null],
  ['femur', 'tape'],
  ['tibia', 'tape'],
  ['trunk', 'tape'],
  ['foot', null],
  ['wall_left', null],
  ['wall_right', null],
  ['ankle', 'ankle'],
  ['lean', 'lean'],
  ['lift', null],
  ['lean_lifted', 'lean'],
];

/** The numbers that are shown where the book does not choose: those of these names that the sheet has. */
export function usualNumberLines(book: Book, sheet: Sheet): readonly NumberLine[] {
  const has = (name: string): boolean => sheet.columns.some((column) => nameKey(column.name) === name);
  const named = (name: string, otherwise: number): string =>
    book.names.has(name) ? name : String(otherwise);
  const errors = {
    tape: named('tape_error', MEASURING_ERROR.length),
    ankle: named('ankle_error', MEASURING_ERROR.ankle),
    lean: has('lean_error') ? 'lean_error' : undefined,
  };
  return usualNumbers
    .filter(([name]) => has(name))
    .map(([column, of]) => {
      const error = of === null ? undefined : errors[of];
      return error === undefined ? { column } : { column, error };
    });
}
