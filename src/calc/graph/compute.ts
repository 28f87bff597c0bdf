import { type Issue, issue } from '../../../functions/core/issue.ts';
import { Kind, type Range, type Value, valueAt } from '../../../functions/core/value.ts';
import type { Fresh, Progress } from '../api.ts';
import { isArray } from '../cells/free-formula.ts';
import type { Spot } from '../cells/place.ts';
import { limits } from '../limits.ts';
import { arrayInOneCell } from '../plan/domain.ts';
import { type Computed, calledOf, isOwn, nameOf, placeIn, type Stuck } from './graph.ts';
import type { CellNode, ColumnNode } from './graph-nodes.ts';
import { overlay, put, sameValue } from './put.ts';
import { dropArrays, keepArray, layOutSpills } from './spilled-arrays.ts';
import { invalidate, placeKey, placeOf, type State } from './state.ts';

/** Milliseconds of work after which progress is told and the work may be ended. */
const BREATH = 50;
/** Rows computed at first, to learn how long a row takes. */
const PROBE = 1024;
/** Array results that still find no rest after so many rounds hang on themselves. */
const ROUNDS = 20;

export interface Pace {
  /** Tells each place before it is computed, so that a watcher knows which formula never came back. */
  readonly careful: boolean;
}

/**
 * Computes whatever is dirty, in order. Ended early, it leaves the rest dirty for the next time.
 *
 * What a book shows follows from the book alone, by these rules:
 *
 * 1. A formula reads what it names, whether or not a branch of an IF comes to it. A circle is one of such reads; its
 *    members are errors, which reach their readers as any error does.
 * 2. A circle in which only columns' formulas read one another is one of columns, in all rows. Where formulas of single
 *    cells take part it is one of cells: the columns are taken apart, unless they are very long, and only the rows
 *    that lean on themselves are in it.
 * 3. Array results come in rounds. In the first none lies over any cell. After each round all are laid out from their
 *    sizes, and whoever reads a cell that one lies over now reads its formula. What is in a circle in one round stays in
 *    it in those that follow: it would need its own result to know how far that reaches.
 *
 * An edit goes on from the values before it. That comes to the same as to begin anew, as long as no formula that may
 * give an array reads from one that has given one; otherwise an edit that may reach them takes the arrays back, and the
 * rounds begin again.
 */
export function* compute(state: State, pace: Pace): Generator<Progress, readonly Fresh[]> {
  const clock = new Clock();
  const rounds = new Rounds(state);
  try {
    for (;;) {
      rounds.next();
      const { order } = state.graph;
      const total = order.length;
      let worked = false;
      for (let i = 0; i < total; i++) {
        const node = order[i]!;
        if (!isDirty(node)) continue;
        worked = true;
        if (rounds.begunBy(node)) break;
        const tell = (): Progress => ({
          done: i,
          total,
          about: `Calculating ${calledOf(node, state.book)}`,
          place: placeOf(node),
        });
        state.current = placeOf(node);
        if (pace.careful || clock.breathe()) yield tell();
        if (node.is === 'cell') computeCell(state, node);
        else yield* computeColumn(state, node, clock, tell);
      }
      if (!worked && !state.unlinked && state.unsettled.size === 0) break;
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

/** Lays out arrays and puts formulas in order before each round; from the very first round where the arrays demand it. */
class Rounds {
  private stuck: Stuck = new Map();
  private done = 0;
  private anew: boolean;

  constructor(private readonly state: State) {
    const { entangled, arrays, unlinked, unsettled } = state;
    this.anew = arrays.size === 0 && !entangled;
    if (entangled && (unlinked || unsettled.size > 0)) this.begin();
  }

  /** Begins anew when this node, which has to be computed, may reach arrays that hang on one another. */
  begunBy(node: Computed): boolean {
    const column = node.is === 'cell' ? node.column : node;
    if (this.anew || !this.state.entangled?.has(column)) return false;
    this.begin();
    return true;
  }

  next(): void {
    const { state } = this;
    this.layOutSpills();
    if (!state.unlinked) return;
    this.link();
    const from = state.arrays.size > 0 && state.graph.arraysFrom();
    if (!from) return;
    state.entangled = new Set([...(state.entangled ?? []), ...from]);
    if (this.anew) return;
    this.begin();
    this.next();
  }

  private begin(): void {
    dropArrays(this.state);
    this.state.entangled = undefined;
    this.state.unlinked = true;
    this.stuck = new Map();
    this.done = 0;
    this.anew = true;
  }

  private layOutSpills(): void {
    const moved = layOutSpills(this.state);
    if (moved.length === 0 || this.done++ < ROUNDS) return;
    if (!this.anew) {
      this.begin();
      return;
    }
    for (const cell of moved) {
      const name = nameOf(cell, this.state.book);
      this.stuck.set(placeIn(cell), issue('#CYCLE!', 'cycle', { details: { path: `${name} → ${name}` } }));
    }
  }

  private link(): void {
    const { state } = this;
    state.unlinked = false;
    const stuck: Stuck = this.anew ? this.stuck : new Map();
    for (const node of state.graph.link(state.formulas, state.book, stuck)) invalidate(node);
  }
}

function computeCell(state: State, cell: CellNode): void {
  cell.dirty = false;
  const stopped = cell.cycle ?? hungIssue(state, cell);
  const result = stopped
    ? { kind: Kind.error, value: stopped }
    : shortEnough(cell.formula.free().evaluate(cell.row));
  const array = isArray(result) && result.rows * result.columns > 1 ? result : undefined;
  // A row of a column's formula has room for one value, as when the column is computed at one go.
  const lone = array && !isOwn(cell);
  const obstacle = lone ? arrayInOneCell(array.rows, array.columns) : keepArray(state, cell, array);
  if (obstacle) put(state, cell, { kind: Kind.error, value: obstacle });
  else if (!isArray(result)) put(state, cell, result);
  else put(state, cell, { kind: result.kinds[0] as Kind, value: valueAt(result, 0) });
}

/** Cells that join one another's texts over and over would soon fill the memory. */
function shortEnough(result: Spot | Range): Spot | Range {
  if (isArray(result) || typeof result.value !== 'string' || result.value.length <= limits.text)
    return result;
  const value = issue('#VALUE!', 'text-too-long', { details: { most: limits.text } });
  return { kind: Kind.error, value };
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
  if (stopped) {
    for (const [from, to] of todo) stopRows(state, column, stopped, from, to);
    return;
  }
  try {
    while (todo.length > 0) {
      const [from, to] = todo[0]!;
      const size = sliceSize(column, to - from);
      const end = Math.min(to, from + size);
      if (size === 1 && todo.length > 1) {
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

/** Shows an error in all rows. Readers hear only of those that are new: in a circle the column reads itself. */
function stopRows(state: State, column: ColumnNode, stopped: Issue, from: number, to: number): void {
  const values = column.writable();
  let seen: Value = null;
  let first = to;
  let last = from;
  for (let row = from; row < to; row++) {
    if (!column.computes(row)) continue;
    const before = values.at(row);
    if (before === null || (before !== seen && !sameValue(before, stopped))) {
      first = Math.min(first, row);
      last = row + 1;
    } else seen = before;
    values.set(row, stopped);
  }
  state.touch(column, first, last);
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
