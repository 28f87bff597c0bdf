import { cellsOf, type LiveBook, sheetOf } from '../book.ts';
import { CellKind, type CellRun, cellOf, isList } from '../cells.ts';
import type { Applied, EditOf } from '../edit.ts';
import type { Sheet } from '../model.ts';
import { refuse } from '../refusal.ts';
import { checkCells } from './limits.ts';
import { checkRows, checkRun } from './shared.ts';

/** Up to here a run in an inverse is a list of cells: it reads well in a journal and costs little. */
const SHORT = 64;

export function putCells(book: LiveBook, edit: EditOf<'put-cells'>): Applied {
  const sheet = sheetOf(book, edit.sheet);
  if (edit.columns.length !== edit.cells.length)
    refuse('A block of cells needs one run of cells for each column.');
  const columns = edit.columns.map((id) => cellsOf(sheet, id));
  for (const run of edit.cells) {
    checkRows(sheet, edit.row, run.length);
    checkRun(run);
  }
  if (new Set(edit.columns).size !== columns.length) refuse('A block of cells names a column twice.');
  // A column counts whole once anything is in it.
  const filling = edit.columns.filter(
    (id, k) => columns[k]!.blank && formulaOf(sheet, id) === undefined && hasContent(edit.cells[k]!),
  );
  checkCells(book, filling.length * sheet.rows);
  const before = columns.map((cells, k) => runOf(cells, edit.row, edit.row + edit.cells[k]!.length));
  columns.forEach((cells, k) => {
    cells.write(edit.row, edit.cells[k]!);
  });
  return {
    inverse: { ...edit, cells: before },
    changes: edit.columns.map((column, k) => ({
      what: 'cells',
      sheet: edit.sheet,
      column,
      from: edit.row,
      to: edit.row + edit.cells[k]!.length,
    })),
  };
}

const formulaOf = (sheet: Sheet, id: string): string | undefined =>
  sheet.columns.find((column) => column.id === id)?.formula;

const hasContent = (run: CellRun): boolean =>
  isList(run)
    ? run.some((cell) => cell !== null && cell !== undefined)
    : run.kinds.some((kind) => kind !== CellKind.blank);

function runOf(cells: ReturnType<typeof cellsOf>, from: number, to: number): CellRun {
  if (to - from > SHORT) return cells.block(from, to);
  return Array.from({ length: to - from }, (_, i) => cellOf(cells, from + i));
}
