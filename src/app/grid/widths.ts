import type { ColumnOutline } from '../../session/api.ts';
import { unitSign } from './units.ts';

const narrowest = 64;
const widest = 230;

/** Width of a column in pixels when its own is not set: as its heading and kind ask for. */
export function widthOf(column: ColumnOutline): number {
  if (column.width !== undefined) return column.width;
  const label = column.label.length * 7.6 + (column.unit ? unitSign(column.unit).length * 7 + 5 : 0) + 20;
  const content = column.kind === 'text' ? 130 : column.kind === 'date' ? 104 : 66;
  const formula = column.formula === undefined ? 0 : 118;
  return Math.round(Math.min(widest, Math.max(narrowest, label, content, formula)));
}

/** Width of the row numbers. */
export function rowNumberWidth(rows: number): number {
  return Math.max(40, String(rows).length * 9 + 18);
}
