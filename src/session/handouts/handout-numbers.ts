/** Which numbers a handout shows where the book does not say. */
import type { Book, Sheet } from '../../book/model.ts';
import { cellInRole } from '../../book/roles/cell-in-role.ts';
import { columnInRole } from '../../book/roles/column-in-role.ts';
import { MEASURING_ERROR } from '../measuring-error.ts';
import type { NumberLine } from './handout-settings.ts';

const usualNumbers: readonly (readonly [column: string, of: 'tape' | 'ankle' | 'lean' | null])[] = [
  ['stature', null],
  ['mass', null],
  ['femur', 'tape'],
  ['tibia', 'tape'],
  ['trunk', 'tape'],
  ['foot', null],
  ['wall_left', null],
  ['wall_right', null],
  ['ankle_left', 'ankle'],
  ['ankle_right', 'ankle'],
  ['ankle', 'ankle'],
  ['lean', 'lean'],
  ['lean_used', 'lean'],
  ['lift_needed', null],
  ['lift', null],
  ['lean_lifted', 'lean'],
];

/** The numbers that are shown where the book does not choose: those of these names that the sheet has. */
export function usualNumberLines(book: Book, sheet: Sheet): readonly NumberLine[] {
  const named = (role: string, otherwise: number): string =>
    cellInRole(book, role)?.name ?? String(otherwise);
  const errors = {
    tape: named('tape_error', MEASURING_ERROR.length),
    ankle: named('ankle_error', MEASURING_ERROR.ankle),
    lean: columnInRole(sheet, 'lean_error')?.name,
  };
  return usualNumbers.flatMap(([role, of]) => {
    const column = columnInRole(sheet, role)?.name;
    if (column === undefined) return [];
    const error = of === null ? undefined : errors[of];
    return error === undefined ? { column } : { column, error };
  });
}
