/** Reads from the grid library what is selected, in terms of the sheet. */
import type Handsontable from 'handsontable/base';
import type { ColumnOutline } from '../../session/api.ts';
import type { GridSelection, Shown } from './host.ts';

type Hot = Handsontable;

/** What is chosen in the grid, in terms of the sheet. */
export function readChosen(hot: Hot, shown: Shown, columns: readonly ColumnOutline[]): GridSelection | null {
  const range = hot.getSelectedRangeLast();
  if (!range) return null;
  const { row, col } = range.highlight;
  const [top, bottom] = sorted(range.from.row ?? 0, range.to.row ?? 0);
  const [left, right] = sorted(range.from.col ?? 0, range.to.col ?? 0);
  const { lines, sheet } = shown;
  const column = columns[Math.max(col ?? 0, 0)];
  if (!column) return null;
  const wholeColumns = top < 0 || hot.selection.isSelectedByColumnHeader();
  const wholeRows = left < 0 || hot.selection.isSelectedByRowHeader();
  const active = lines.count > 0 ? lines.at(Math.max(row ?? 0, 0)) : ({ is: 'new', row: 0 } as const);
  const runs = lines.runs(Math.max(top, 0), bottom);
  // A line of summaries is about the column as a whole.
  const summary = active.is === 'summary';
  return {
    sheet: sheet.id,
    what: wholeColumns || summary ? (wholeRows ? 'all' : 'columns') : wholeRows ? 'rows' : 'cells',
    row: active.is === 'summary' ? (runs[0]?.row ?? 0) : active.row,
    column: column.id,
    columns: columns.slice(Math.max(left, 0), right + 1).map(({ id }) => id),
    runs,
    rows: runs.reduce((all, { count }) => all + count, 0),
  };
}

/** Where the chosen block stands in the grid; null where nothing is chosen. */
export interface ChosenBlock {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

export function blockOf(hot: Hot): ChosenBlock | null {
  const range = hot.getSelectedRangeLast();
  if (!range) return null;
  const [top, bottom] = sorted(range.from.row ?? 0, range.to.row ?? 0);
  const [left, right] = sorted(range.from.col ?? 0, range.to.col ?? 0);
  return { top: Math.max(top, 0), left: Math.max(left, 0), bottom, right };
}

/**
 * Chooses again what was chosen, after rows or columns came, went or changed places: the same row and column where they
 * are still there, otherwise what stands in their place now. The focus stays where it is, and what is chosen rightly
 * already is left alone: an editor may be open there. Answers whether anything was done.
 */
export function chooseAgain(
  hot: Hot,
  before: GridSelection,
  block: ChosenBlock,
  { lines }: Shown,
  columns: readonly ColumnOutline[],
): boolean {
  const last = { line: lines.count - 1, column: columns.length - 1 };
  if (last.line < 0 || last.column < 0) {
    hot.deselectCell();
    return true;
  }
  const places = before.columns
    .map((id) => columns.findIndex((column) => column.id === id))
    .filter((index) => index >= 0);
  const left = places.length ? Math.min(...places) : Math.min(block.left, last.column);
  const right = places.length ? Math.max(...places) : left;
  const top = Math.min(lines.lineOf(before.runs[0]?.row ?? before.row) ?? block.top, last.line);
  const bottom = before.what === 'columns' ? last.line : Math.min(top + block.bottom - block.top, last.line);
  const now = blockOf(hot);
  if (now && now.left === left && now.right === right && now.top === top && now.bottom === bottom)
    return false;
  if (before.what === 'columns') hot.selectColumns(left, right);
  else if (before.what === 'rows') hot.selectRows(top, bottom);
  else if (before.what === 'all') hot.selection.selectAll();
  else hot.selectCell(top, left, bottom, right, false, false);
  return true;
}

export const sorted = (a: number, b: number): readonly [number, number] => (a < b ? [a, b] : [b, a]);
