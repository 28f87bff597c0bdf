import type { ColumnOutline } from '../../session/api.ts';
import { CellMark } from '../../session/sheet/cell-mark.ts';
import { decorate } from '../marks/decorate.ts';
import type { Shown } from './host.ts';
import type { TileCache } from './tiles.ts';

/** What a cell holds that has nothing but its text and its classes; undefined for summaries and for what marks draw into. */
export function plainCell(
  shown: Shown,
  tiles: TileCache,
  line: number,
  index: number,
  column: ColumnOutline,
): { readonly text: string; readonly classes: string } | undefined {
  const what = shown.lines.at(line);
  if (what.is === 'new')
    return { text: '', classes: column.formula === undefined ? 'new-row' : 'new-row worked' };
  if (what.is === 'summary' || (column.marks && tiles.drawing(line, index))) return undefined;
  const text = tiles.text(line, index);
  return { text: text ?? '', classes: classesOf(tiles.marks(line, index), column, text === undefined) };
}

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
  const plain = plainCell(shown, tiles, line, index, column);
  if (plain) {
    td.textContent = plain.text;
    td.className = plain.classes;
  } else if (what.is === 'row') {
    const text = tiles.text(line, index);
    td.textContent = text ?? '';
    const classes = classesOf(tiles.marks(line, index), column, text === undefined);
    const { drawing, at } = tiles.drawing(line, index)!;
    td.className = classes + decorate(td, column.marks!, drawing, at);
  } else if (what.is === 'summary') {
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
  if (marks & CellMark.pending) names += ' pending';
  if (marks & CellMark.held) names += ' held';
  if (marks & CellMark.override) names += ' own';
  if (marks & CellMark.formula) names += ' free';
  if (marks & CellMark.named) names += ' named';
  if (marks & CellMark.unmatched) names += ' unmatched';
  return names;
}

/** Whether the cell wants to be announced as wrong. */
export const isWrong = (marks: number): boolean =>
  (marks & (CellMark.error | CellMark.held | CellMark.unmatched)) !== 0;
