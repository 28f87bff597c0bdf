import { Kind } from '../../../functions/core/value.ts';
import type { Spot } from '../cells/place.ts';
import type { CellNode } from './graph-nodes.ts';
import type { State } from './state.ts';

/** Writes a cell's value; readers hear of it only when it is another one than they have seen. */
export function put(state: State, cell: CellNode, { kind, value }: Spot): void {
  const { column, row } = cell;
  const same = cell.kind === kind && sameValue(cell.value, value);
  cell.kind = kind;
  cell.value = value;
  overlay(cell);
  if (!same) state.touch(column, row, row + 1);
}

/** Puts a cell's value back where its column's formula was computed over it. */
export function overlay({ column, row, kind, value }: CellNode): void {
  const values = column.writable();
  if (kind === Kind.date) values.setDate(row, value as number);
  else values.set(row, value);
}

export function sameValue(a: Spot['value'], b: Spot['value']): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object') return false;
  return JSON.stringify(a) === JSON.stringify(b);
}
