import type { ColumnOutline } from '../../session/api.ts';
import { CellMark } from '../../session/api.ts';
import { decorate } from '../marks/decorate.ts';
import type { Shown } from './host.ts';
import type { TileCache } from './tiles.ts';

/** Writes one cell: its text and what its marks say. Colour never says it alone: each mark has a sign of its own. */
export function writeCell(
  td: HTMLTableCellElement,
  shown: Shown,
  tiles: TileCache,
  line: number,
  index: number,
  column: ColumnOutline,
): void {
  const what = shown.lines.at(line);
  if (td.title) td.removeAttribute('title');
  if (what.is === 'row') {
    const text = tiles.text(line, index);
    td.textContent = text ?? '';
    const classes = classesOf(tiles.marks(line, index), column, text === undefined);
    const drawn = column.marks && tiles.drawing(line, index);
    td.className = drawn ? classes + decorate(td, column.marks!, drawn.drawing, drawn.at) : classes;
  } else if (what.is === 'new') {
    td.textContent = '';
    td.className = column.formula === undefined ? 'new-row' : 'new-row worked';
  } else {
    const summary = shown.summaries[what.group]?.[column.id];
    td.textContent = summary?.text ?? '';
    td.className = column.kind === 'number' || column.kind === 'date' ? 'summary numeric' : 'summary';
    if (summary?.wrong) td.className += ' error';
    if (summary?.about) td.title = summary.about;
    if (summary?.what) {
      const name = document.createElement('span');
      name.className = 'summary-what';
      name.textContent = summary.what;
      td.prepend(name, ' ');
    }
  }
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
