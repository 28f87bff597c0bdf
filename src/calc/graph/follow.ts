import type { Change } from '../../book/edit.ts';
import type { Sheet } from '../../book/model.ts';
import { indexBook } from '../language/book-index.ts';
import { ColumnNode, inRows } from './graph-nodes.ts';
import { columnKey } from './reads.ts';
import { dropArray, dropArrays } from './spilled-arrays.ts';
import { invalidate, type State } from './state.ts';

/** Brings what is kept about the book in line with it after these changes; whatever they reach becomes dirty. */
export function follow(state: State, changes: readonly Change[]): void {
  const moved = new Map<string, number>();
  for (const change of changes)
    if (change.what === 'rows')
      moved.set(change.sheet, Math.min(change.from, moved.get(change.sheet) ?? change.from));
  for (const [sheet, from] of moved) followRows(state, sheet, from);
  if (changes.some(({ what }) => what === 'columns' || what === 'sheets' || what === 'names'))
    followStructure(state);
  for (const change of changes) if (change.what === 'cells') followCells(state, change);
}

/** Everything has to be computed again. */
export function invalidateAll(state: State): void {
  for (const column of state.graph.columns.values()) {
    column.dirty.addAll();
    for (const cell of column.own.values()) cell.dirty = true;
    state.touch(column, 0, column.cells.length);
  }
}

/** Takes in the book as it is: when it is opened, and when its sheets, columns or names have changed. */
export function followStructure(state: State): void {
  const { graph, book, formulas } = state;
  // Columns may lie in another order now: array results are laid out anew.
  dropArrays(state);
  state.index = indexBook(book);
  formulas.renew(state.index);
  state.unlinked = true;
  const present = new Set<string>();
  for (const sheet of book.sheets) {
    for (const column of sheet.columns) {
      const key = columnKey(sheet.id, column.id);
      present.add(key);
      const cells = sheet.cells.get(column.id)!;
      let node = graph.columns.get(key);
      if (!node || node.cells.length !== cells.length) {
        node = new ColumnNode(key, sheet.id, column, cells);
        graph.columns.set(key, node);
        state.touch(node, 0, cells.length);
      }
      node.column = column;
      node.cells = cells;
      followFormula(state, node);
      followOwn(state, node, 0, cells.length);
      settleValues(node);
    }
  }
  for (const key of [...graph.columns.keys()]) if (!present.has(key)) graph.columns.delete(key);
}

function followFormula(state: State, node: ColumnNode): void {
  const text = node.column.formula;
  const formula = text === undefined ? undefined : state.formulas.get(text, node.sheet, true);
  if (formula === node.formula) return;
  node.formula = formula;
  node.cost = 0;
  node.dirty.clear();
  if (formula) node.dirty.addAll();
  else if (node.values) {
    node.take(0, node.cells.length);
    for (const cell of node.own.values()) cell.dirty = true;
  }
  state.touch(node, 0, node.cells.length);
}

/** Cells with formulas of their own, in rows [from, to). */
function followOwn(state: State, node: ColumnNode, from: number, to: number): void {
  const { formulas } = node.cells;
  for (const [row, cell] of inRows(node.own, from, to)) {
    if (formulas.has(row)) continue;
    dropArray(state, cell);
    node.own.delete(row);
    state.unlinked = true;
  }
  for (const [row, text] of inRows(formulas, from, to)) {
    const formula = state.formulas.get(text, node.sheet, false);
    const cell = node.own.get(row);
    if (cell?.formula === formula) continue;
    if (cell) dropArray(state, cell);
    node.ownFormula(row, formula);
    state.unlinked = true;
  }
}

/** A column with nothing but the book's values reads them where they are; any other has values of its own. */
function settleValues(node: ColumnNode): void {
  if (node.mixed) node.writable();
  else node.values = undefined;
}

function followRows(state: State, sheetId: string, from: number): void {
  const sheet = state.book.sheets.find((s) => s.id === sheetId);
  if (!sheet) return;
  state.unlinked = true;
  dropArrays(state, sheetId);
  for (const { node, cells } of nodesOf(state, sheet)) {
    const rows = cells.length;
    const before = node.values?.rows ?? rows;
    const keep = Math.min(from, rows, before);
    node.cells = cells;
    for (const row of [...node.own.keys()]) if (row >= from) node.own.delete(row);
    followOwn(state, node, from, rows);
    if (node.values) {
      node.values = node.values.resized(rows, keep);
      node.take(keep, rows);
    }
    settleValues(node);
    if (node.formula) node.dirty.add(keep, rows);
    for (const cell of node.own.values()) if (cell.row >= from) cell.dirty = true;
    // How many rows there were is not known where the book holds all values; those that are gone had readers too.
    state.touch(node, from, Number.POSITIVE_INFINITY);
  }
}

function nodesOf(state: State, sheet: Sheet) {
  return sheet.columns.flatMap((column) => {
    const node = state.graph.column(sheet.id, column.id);
    return node ? [{ node, cells: sheet.cells.get(column.id)! }] : [];
  });
}

function followCells(state: State, change: Extract<Change, { what: 'cells' }>): void {
  const node = state.graph.column(change.sheet, change.column);
  const cells = state.book.sheets.find((s) => s.id === change.sheet)?.cells.get(change.column);
  if (!node || !cells) return;
  node.cells = cells;
  const to = Math.min(change.to, cells.length);
  const { from } = change;
  // The same command took the rows away again, after it wrote in them.
  if (from >= to) return;
  followOwn(state, node, from, to);
  node.take(from, to);
  settleValues(node);
  for (const [, cell] of inRows(node.own, from, to)) cell.dirty = true;
  if (node.formula) {
    node.dirty.add(from, to);
    // A single cell may now be the book's own instead of the formula's, or the other way round.
    state.unlinked = true;
  }
  // An array result that still lies there is filled in again; others may find room or lose it.
  for (const [, origin] of inRows(node.covered, from, to)) invalidate(origin);
  if (state.hasArrays(change.sheet)) state.unsettled.add(change.sheet);
  state.touch(node, from, to);
}
