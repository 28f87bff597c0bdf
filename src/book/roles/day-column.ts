import type { Column, Sheet } from '../model.ts';
import { columnInRole } from './column-in-role.ts';

/** The day that a row is of: its test, else its session, else the first date that is no birth date. */
export const dayColumn = (sheet: Pick<Sheet, 'columns'>): Column | undefined =>
  ['tested', 'day'].map((role) => columnInRole(sheet, role)).find((column) => column?.kind === 'date') ??
  sheet.columns.find((column) => column.kind === 'date' && columnInRole(sheet, 'birth_date') !== column);
