import type { ColumnOutline } from '../../session/api.ts';
import { CellMark } from '../../session/api.ts';
import type { TileCache } from './tiles.ts';

/** Writes one cell: its text and what its marks say. Colour never says it alone: each mark has a sign of its own. */
export function writeCell(
  td: HTMLTableCellElement,
  tiles: TileCache,
  row: number,
  index: number,
  column: ColumnOutline,
): void {
  const marks = tiles.marks(row, index);
  const text = tiles.text(row, index);
  td.textContent = text ?? '';
  td.className = classesOf(marks, column, text === undefined && !tiles.has(row, index));
}

function classesOf(marks: number, column: ColumnOutline, waiting: boolean): string {
  let names = column.formula === undefined ? '' : 'worked';
  if (waiting) return `${names} waiting`;
  if (marks & CellMark.numeric) names += ' numeric';
  if (marks & CellMark.error) names += ' error';
  if (marks & CellMark.held) names += ' held';
  if (marks & CellMark.override) names += ' own';
  if (marks & CellMark.formula) names += ' free';
  if (marks & CellMark.named) names += ' named';
  return names;
}

/** Whether the cell wants to be announced as wrong. */
export const isWrong = (marks: number): boolean => (marks & (CellMark.error | CellMark.held)) !== 0;
