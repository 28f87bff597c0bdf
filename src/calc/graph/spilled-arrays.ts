import { type Issue, issue } from '../../../functions/core/issue.ts';
import { Kind, type Range, valueAt } from '../../../functions/core/value.ts';
import type { Sheet } from '../../book/model.ts';
import type { CellNode, ColumnNode, SpillLayout } from './graph-nodes.ts';
import { put } from './put.ts';
import type { State } from './state.ts';

/*
 * Array results lie over the blank cells beside their formula. Where each lies is decided between two rounds of
 * computing, for all of a sheet at once, from their sizes and the book alone: in which order formulas were computed or
 * written makes no difference.
 */

/** Notes a cell's result where it is an array. Answers why an array of this size finds no room, if that is known. */
export function keepArray(state: State, origin: CellNode, array: Range | undefined): Issue | undefined {
  if (!array && !origin.array && !origin.layout) return undefined;
  origin.array = array;
  state.arrays.add(origin);
  if (!isLaidOut(origin)) state.unsettled.add(origin.column.sheet);
  fill(state, origin);
  return isLaidOut(origin) ? origin.layout?.obstacle : undefined;
}

const isLaidOut = ({ array, layout }: CellNode): boolean =>
  layout !== undefined && array?.rows === layout.rows && array.columns === layout.columns;

/** Decides anew where array results lie, on sheets where that may have changed; answers whose layout is another now. */
export function layOutSpills(state: State): readonly CellNode[] {
  const moved: CellNode[] = [];
  for (const id of state.unsettled) {
    const sheet = state.book.sheets.find((s) => s.id === id);
    if (!sheet) continue;
    const layouts = layoutsOn(state, sheet);
    for (const [origin, layout] of layouts) {
      if (!origin.array) state.arrays.delete(origin);
      if (isSame(layout, origin.layout)) layouts.delete(origin);
      else uncover(state, origin);
    }
    for (const [origin, layout] of layouts) {
      moved.push(origin);
      origin.layout = layout;
      if (!origin.array || !layout) continue;
      cover(state, origin);
      if (layout.obstacle) put(state, origin, { kind: Kind.error, value: layout.obstacle });
      else put(state, origin, { kind: origin.array.kinds[0] as Kind, value: valueAt(origin.array, 0) });
    }
  }
  state.unsettled.clear();
  if (moved.length > 0) state.unlinked = true;
  return moved;
}

/** Takes array results back, of one sheet or of all: they are computed again, and laid out as if for the first time. */
export function dropArrays(state: State, sheet?: string): void {
  for (const origin of state.arrays) {
    if (sheet !== undefined && origin.column.sheet !== sheet) continue;
    dropArray(state, origin);
    origin.dirty = true;
  }
}

export function dropArray(state: State, origin: CellNode): void {
  if (!state.arrays.delete(origin)) return;
  uncover(state, origin);
  origin.array = undefined;
  origin.layout = undefined;
  state.unsettled.add(origin.column.sheet);
  state.unlinked = true;
}

/**
 * Of two array results that want the same cell, the one that begins further left, then further up, gets it; neither
 * gives way in part.
 */
function layoutsOn(state: State, sheet: Sheet): Map<CellNode, SpillLayout | undefined> {
  const columns = sheet.columns.map((c) => state.graph.column(sheet.id, c.id)!);
  const places = new Map(columns.map((column, i) => [column, i]));
  const place = (origin: CellNode): number => places.get(origin.column)!;
  const origins = [...state.arrays].filter((origin) => origin.column.sheet === sheet.id);
  origins.sort((a, b) => place(a) - place(b) || a.row - b.row);
  const taken = new Map<ColumnNode, Uint8Array>();
  const layouts = new Map<CellNode, SpillLayout | undefined>();
  for (const origin of origins) {
    const { array, row } = origin;
    if (!array) {
      layouts.set(origin, undefined);
      continue;
    }
    const covers = columns.slice(place(origin), place(origin) + array.columns);
    const obstacle = obstacleOf(origin, array, covers, taken);
    layouts.set(origin, { rows: array.rows, columns: array.columns, covers, obstacle });
    if (obstacle) continue;
    for (const column of covers) {
      const rows = taken.get(column) ?? new Uint8Array(column.cells.length);
      taken.set(column, rows.fill(1, row, row + array.rows));
    }
  }
  return layouts;
}

function obstacleOf(
  origin: CellNode,
  { rows, columns }: Range,
  covers: readonly ColumnNode[],
  taken: ReadonlyMap<ColumnNode, Uint8Array>,
): Issue | undefined {
  const details = { rows, columns };
  if (covers.length < columns || origin.row + rows > origin.column.cells.length)
    return issue('#SPILL!', 'spill-outside', { details });
  for (const [c, column] of covers.entries())
    for (let row = origin.row + (c === 0 ? 1 : 0); row < origin.row + rows; row++) {
      if (column.formula === undefined && column.cells.kinds[row] === 0 && !taken.get(column)?.[row])
        continue;
      return issue('#SPILL!', 'spill-blocked', {
        received: `row ${row + 1} of ${column.column.name}`,
        details,
      });
    }
  return undefined;
}

function isSame(a: SpillLayout | undefined, b: SpillLayout | undefined): boolean {
  if (!a || !b) return a === b;
  const { obstacle } = a;
  if (obstacle?.reason !== b.obstacle?.reason || obstacle?.received !== b.obstacle?.received) return false;
  return a.rows === b.rows && a.columns === b.columns;
}

/** Cells beside the formula that its array result lies over. */
function* coveredBy({
  layout,
  row,
}: CellNode): Iterable<readonly [column: ColumnNode, from: number, to: number]> {
  if (!layout || layout.obstacle) return;
  for (const [c, column] of layout.covers.entries())
    yield [column, c === 0 ? row + 1 : row, row + layout.rows];
}

function cover(state: State, origin: CellNode): void {
  for (const [column, from, to] of coveredBy(origin))
    for (let row = from; row < to; row++) column.covered.set(row, origin);
  fill(state, origin);
}

/** Puts the array's values where it lies; if it has another size now, as far as they go. */
function fill(state: State, origin: CellNode): void {
  const { array } = origin;
  let c = 0;
  for (const [column, from, to] of coveredBy(origin)) {
    const values = column.writable();
    for (let row = from; row < to; row++) {
      const r = row - origin.row;
      const inside = array && r < array.rows && c < array.columns;
      const at = inside ? r * array.columns + c : 0;
      if (!inside) values.set(row, null);
      else if (array.kinds[at] === Kind.date) values.setDate(row, array.numbers[at]!);
      else values.set(row, valueAt(array, at));
    }
    state.touch(column, from, to);
    c++;
  }
}

/** The covered cells are the book's again. */
function uncover(state: State, origin: CellNode): void {
  for (const [column, from, to] of coveredBy(origin)) {
    for (let row = from; row < to; row++) {
      if (column.covered.get(row) !== origin) continue;
      column.covered.delete(row);
      // A formula of its own has come there meanwhile, and shows its value.
      if (!column.own.has(row) && row < (column.values?.rows ?? 0)) column.take(row, row + 1);
    }
    state.touch(column, from, to);
  }
}
