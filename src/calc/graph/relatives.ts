import type { Place } from '../api.ts';
import type { Computed } from './graph.ts';
import { placeKey, placeOf, type State } from './state.ts';

/** Ranges up to so many rows are told cell by cell. */
const FEW = 24;

function at(key: string, row?: number): Place {
  const [sheet, column] = key.split('\u0000') as [string, string];
  return row === undefined ? { sheet, column } : { sheet, column, row };
}

/** Columns and cells that the formula at a place reads. A column without a row stands for all of it. */
export function precedentsOf(state: State, place: Place): readonly Place[] {
  const column = state.graph.column(place.sheet, place.column);
  if (!column) return [];
  const { row } = place;
  const node: Computed | undefined = row === undefined ? column : state.graph.provider(column, row);
  if (!node?.formula) return [];
  if (node.is === 'cell' && node.row !== row) return [placeOf(node)];
  const { rows, whole, cells, ranges } = node.formula.reads;
  const found: Place[] = [];
  for (const key of rows) found.push(at(key, row));
  for (const key of whole) found.push(at(key));
  for (const cell of cells) {
    if (!cell.moves) found.push(at(cell.key, cell.row));
    else found.push(row === undefined ? at(cell.key) : at(cell.key, cell.row + row));
  }
  for (const { key, from, to, fromMoves, toMoves } of ranges) {
    const ends = [fromMoves ? from + (row ?? 0) : from, toMoves ? to + (row ?? 0) : to] as const;
    const [first, last] = [Math.min(...ends), Math.max(...ends)];
    if (last - first >= FEW || (row === undefined && (fromMoves || toMoves))) found.push(at(key));
    else for (let r = first; r <= last; r++) found.push(at(key, r));
  }
  return unique(found);
}

/** Columns and cells whose formulas read a place. */
export function dependentsOf(state: State, place: Place): readonly Place[] {
  const column = state.graph.column(place.sheet, place.column);
  if (!column) return [];
  const { row } = place;
  const { byRow, whole, cells, ranges, movingRanges } = column.readers;
  const found: Place[] = [];
  for (const reader of byRow) found.push(row === undefined ? placeOf(reader) : { ...placeOf(reader), row });
  for (const reader of whole) found.push(placeOf(reader));
  for (const [r, readers] of cells)
    if (row === undefined || r === row) for (const reader of readers) found.push(placeOf(reader));
  for (const { reader, from, to } of ranges)
    if (row === undefined || (from <= row && row <= to)) found.push(placeOf(reader));
  for (const { reader } of movingRanges) found.push(placeOf(reader));
  return unique(found);
}

const unique = (places: readonly Place[]): readonly Place[] => [
  ...new Map(places.map((place) => [placeKey(place), place])).values(),
];
