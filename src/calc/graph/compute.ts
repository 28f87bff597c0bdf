import { type Issue, issue } from '../../../functions/core/issue.ts';
import { Kind, type Range, valueAt } from '../../../functions/core/value.ts';
import type { Fresh, Progress } from '../api.ts';
import { isArray } from '../cells/free-formula.ts';
import type { Spot } from '../cells/place.ts';
import { limits } from '../limits.ts';
import type { Computed } from './graph.ts';
import { nameOf } from './graph.ts';
import type { CellNode, ColumnNode } from './nodes.ts';
import { clearSpill, spill } from './spill.ts';
import { placeKey, placeOf, type State, soil } from './state.ts';

/** Milliseconds of work after which progress is told and the work may be ended. */
const BREATH = 50;
/** Rows computed at first, to learn how long a row takes. */
const PROBE = 1024;
/** An array result may change what others read, which may change the array: after so many rounds that is a circle. */
const ROUNDS = 20;

export interface Pace {
  /** Tells each place before it is computed, so that a watcher knows which formula never came back. */
  readonly careful: boolean;
}

/** Computes whatever is dirty, in order. Ended early, it leaves the rest dirty for the next time. */
export function* compute(state: State, pace: Pace): Generator<Progress, readonly Fresh[]> {
  const clock = new Clock();
  try {
    for (let round = 0; ; round++) {
      if (state.unlinked) link(state);
      const { order } = state.graph;
      const total = order.length;
      let worked = false;
      for (let i = 0; i < total; i++) {
        const node = order[i]!;
        if (!isDirty(node)) continue;
        worked = true;
        const tell = (): Progress => ({
          done: i,
          total,
          about: nameOf(node, state.book),
          place: placeOf(node),
        });
        state.current = placeOf(node);
        if (pace.careful || clock.breathe()) yield tell();
        if (round >= ROUNDS) giveUp(state, node);
        else if (node.is === 'cell') computeCell(state, node);
        else yield* computeColumn(state, node, clock, tell);
      }
      if (!worked && !state.unlinked) break;
    }
  } finally {
    state.current = undefined;
  }
  return state.takeFresh();
}

class Clock {
  private last = performance.now();
  /** True once in a while. */
  breathe(): boolean {
    const now = performance.now();
    if (now - this.last < BREATH) return false;
    this.last = now;
    return true;
  }
}

const isDirty = (node: Computed): boolean => (node.is === 'cell' ? node.dirty : !node.dirty.empty);

function link(state: State): void {
  state.unlinked = false;
  for (const node of state.graph.link(state.formulas, state.book)) soil(node);
}

function computeCell(state: State, cell: CellNode): void {
  cell.dirty = false;
  const stopped = cell.cycle ?? hungIssue(state, cell);
  if (stopped) {
    clearSpill(state, cell);
    put(state, cell, { kind: Kind.error, value: stopped });
    return;
  }
  const result = shortEnough(cell.formula.free().evaluate(cell.row));
  if (!isArray(result)) {
    clearSpill(state, cell);
    put(state, cell, result);
    return;
  }
  const obstacle = spill(state, cell, result);
  if (obstacle) put(state, cell, { kind: Kind.error, value: obstacle });
  else put(state, cell, { kind: result.kinds[0] as Kind, value: valueAt(result, 0) });
}

/** Cells that join one another's texts over and over would soon fill the memory. */
function shortEnough(result: Spot | Range): Spot | Range {
  if (isArray(result) || typeof result.value !== 'string' || result.value.length <= limits.text)
    return result;
  const value = issue('#VALUE!', 'text-too-long', { details: { most: limits.text } });
  return { kind: Kind.error, value };
}

/** Writes a cell's value; readers hear of it only when it is another one. */
function put(state: State, cell: CellNode, { kind, value }: Spot): void {
  const { column, row } = cell;
  const same = cell.kind === kind && sameValue(cell.value, value);
  cell.kind = kind;
  cell.value = value;
  overlay(cell);
  if (!same) state.touch(column, row, row + 1);
}

function overlay({ column, row, kind, value }: CellNode): void {
  const values = column.writable();
  if (kind === Kind.date) values.setDate(row, value as number);
  else values.set(row, value);
}

function sameValue(a: Spot['value'], b: Spot['value']): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object') return false;
  return JSON.stringify(a) === JSON.stringify(b);
}

function* computeColumn(
  state: State,
  column: ColumnNode,
  clock: Clock,
  tell: () => Progress,
): Generator<Progress, void> {
  const rows = column.cells.length;
  const todo = [...column.dirty.within(rows)];
  column.dirty.clear();
  if (todo.length === 0) return;
  column.writable();
  const stopped = column.cycle ?? hungIssue(state, column);
  try {
    while (todo.length > 0) {
      const [from, to] = todo[0]!;
      const size = stopped ? to - from : sliceSize(column, to - from);
      const end = Math.min(to, from + size);
      if (stopped) for (let row = from; row < end; row++) column.values!.set(row, stopped);
      else if (size === 1 && todo.length > 1) {
        // Single rows far apart are computed in one go.
        const singles = todo.splice(0, PROBE);
        runRows(state, column, rowsOf(singles));
        for (const [first, last] of singles) settle(state, column, first, last);
        continue;
      } else run(state, column, from, end);
      settle(state, column, from, end);
      if (end === to) todo.shift();
      else {
        todo[0] = [end, to];
        if (clock.breathe()) yield tell();
      }
    }
  } finally {
    for (const [from, to] of todo) column.dirty.add(from, to);
  }
}

/** Rows computed at one go: all, unless that would take longer than a breath. */
function sliceSize(column: ColumnNode, rows: number): number {
  if (rows <= PROBE) return rows;
  if (column.cost === 0) return PROBE;
  return Math.max(PROBE, Math.min(rows, Math.floor(BREATH / column.cost)));
}

function run(state: State, column: ColumnNode, from: number, to: number): void {
  const all = from === 0 && to === column.cells.length;
  const rows = all ? undefined : rowsOf([[from, to]]);
  const start = performance.now();
  runRows(state, column, rows);
  if (to - from >= PROBE) column.cost = (performance.now() - start) / (to - from);
}

function runRows(state: State, column: ColumnNode, rows: Int32Array | undefined): void {
  column.formula!.plan().run(state.place.source, rows, column.values!);
}

function rowsOf(ranges: readonly (readonly [number, number])[]): Int32Array {
  const rows = new Int32Array(ranges.reduce((sum, [from, to]) => sum + to - from, 0));
  let i = 0;
  for (const [from, to] of ranges) for (let row = from; row < to; row++) rows[i++] = row;
  return rows;
}

/** Puts what stands in single rows over the column's formula back, and tells the readers of all other rows. */
function settle(state: State, column: ColumnNode, from: number, to: number): void {
  const { cells, own, values } = column;
  let told = from;
  if (!cells.blank)
    for (let row = from; row < to; row++) {
      if (cells.kinds[row] === 0) continue;
      const cell = own.get(row);
      if (cell) overlay(cell);
      else values!.take(cells, row, row + 1);
      // A formula may read a single cell of its own column: that one has not changed.
      state.touch(column, told, row);
      told = row + 1;
    }
  state.touch(column, told, to);
}

function hungIssue(state: State, node: Computed): Issue | undefined {
  if (state.hung.size === 0) return undefined;
  return state.hung.get(placeKey(placeOf(node))) === node.formula!.text
    ? issue('#ERROR!', 'hung')
    : undefined;
}

/** A node that becomes dirty again and again depends on itself through what an array covers. */
function giveUp(state: State, node: Computed): void {
  const name = nameOf(node, state.book);
  const circle = issue('#CYCLE!', 'cycle', { details: { path: `${name} → ${name}` } });
  if (node.is === 'cell') {
    node.dirty = false;
    node.kind = Kind.error;
    node.value = circle;
    overlay(node);
    return;
  }
  node.dirty.clear();
  const values = node.writable();
  for (let row = 0; row < node.cells.length; row++) if (node.computes(row)) values.set(row, circle);
}
