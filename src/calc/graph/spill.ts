import { type Issue, issue } from '../../../functions/core/issue.ts';
import { Kind, type Range, valueAt } from '../../../functions/core/value.ts';
import type { CellNode, ColumnNode } from './nodes.ts';
import type { State } from './state.ts';

/** Takes an array result back from the cells it covers; they are blank again. */
export function clearSpill(state: State, origin: CellNode): void {
  state.blocked.delete(origin);
  if (!origin.spill) return;
  origin.spill = undefined;
  state.unlinked = true;
  for (const waiting of state.blocked) if (waiting.column.sheet === origin.column.sheet) waiting.dirty = true;
  for (const column of state.graph.columns.values()) {
    if (column.sheet !== origin.column.sheet) continue;
    for (const [row, by] of [...column.covered]) {
      if (by !== origin) continue;
      column.covered.delete(row);
      if (!column.values || row >= column.values.rows) continue;
      column.values.take(column.cells, row, row + 1);
      state.touch(column, row, row + 1);
    }
  }
}

/** Lays an array result over the cells from its formula on; answers why it cannot stand there. */
export function spill(state: State, origin: CellNode, result: Range): Issue | undefined {
  const { rows, columns } = result;
  const same = origin.spill && origin.spill.rows === rows && origin.spill.columns === columns;
  const targets = targetsOf(state, origin, columns);
  const weaker = new Set<CellNode>();
  const obstacle = obstacleOf(state, origin, targets, rows, columns, weaker);
  if (obstacle) {
    clearSpill(state, origin);
    state.blocked.add(origin);
    return obstacle;
  }
  state.blocked.delete(origin);
  for (const other of weaker) {
    clearSpill(state, other);
    other.dirty = true;
  }
  if (!same) clearSpill(state, origin);
  targets.forEach((column, c) => {
    const values = column.writable();
    for (let r = 0; r < rows; r++) {
      if (r === 0 && c === 0) continue;
      const row = origin.row + r;
      const at = r * columns + c;
      const value = valueAt(result, at);
      if (result.kinds[at] === Kind.date) values.setDate(row, value as number);
      else values.set(row, value);
      if (!same) column.covered.set(row, origin);
    }
    const from = c === 0 ? origin.row + 1 : origin.row;
    state.touch(column, from, origin.row + rows);
  });
  if (!same) {
    origin.spill = { rows, columns };
    state.unlinked = true;
  }
  return undefined;
}

/** The columns from the formula's own to the right, as many as there are of those wanted. */
function targetsOf(state: State, origin: CellNode, columns: number): readonly ColumnNode[] {
  const sheet = state.book.sheets.find((s) => s.id === origin.column.sheet)!;
  const first = sheet.columns.findIndex((c) => c.id === origin.column.column.id);
  return sheet.columns.slice(first, first + columns).map((c) => state.graph.column(sheet.id, c.id)!);
}

/** Of two array results that want the same cell, the one that begins further left, then further up, gets it. */
function comesFirst(state: State, a: CellNode, b: CellNode): boolean {
  if (a.column === b.column) return a.row < b.row;
  const sheet = state.book.sheets.find((s) => s.id === a.column.sheet)!;
  return sheet.columns.indexOf(a.column.column) < sheet.columns.indexOf(b.column.column);
}

/** What is in the way; array results that have to give way are gathered in `weaker`. */
function obstacleOf(
  state: State,
  origin: CellNode,
  targets: readonly ColumnNode[],
  rows: number,
  columns: number,
  weaker: Set<CellNode>,
): Issue | undefined {
  const details = { rows, columns };
  if (targets.length < columns || origin.row + rows > origin.column.cells.length)
    return issue('#SPILL!', 'spill-outside', { details });
  for (const [c, column] of targets.entries()) {
    for (let r = 0; r < rows; r++) {
      if (r === 0 && c === 0) continue;
      const row = origin.row + r;
      const other = column.covered.get(row);
      if (column.formula === undefined && column.cells.kinds[row] === 0) {
        if (!other || other === origin) continue;
        if (comesFirst(state, origin, other)) {
          weaker.add(other);
          continue;
        }
      }
      return issue('#SPILL!', 'spill-blocked', {
        received: `row ${row + 1} of ${column.column.name}`,
        details,
      });
    }
  }
  return undefined;
}
