import type { Sheet } from '../book/model.ts';
import { columnInRole } from '../book/roles/column-in-role.ts';
import type { ReadContext } from './open-book.ts';

/** The athlete that a row of any sheet is about; undefined where the sheet or the row names none. */
export function athleteIn(
  { calculation }: Pick<ReadContext, 'calculation'>,
  sheet: Sheet,
  row: number,
): string | undefined {
  const column = columnInRole(sheet, 'athlete');
  const value = column ? calculation.value(sheet.id, column.id, row) : null;
  const name = typeof value === 'string' || typeof value === 'number' ? String(value).trim() : '';
  return name === '' ? undefined : name;
}
