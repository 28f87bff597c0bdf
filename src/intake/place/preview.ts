import type { Cell } from '../../book/cells.ts';
import { cellAt, type Filled } from '../merge/index.ts';

/** Rows as they would stand in the sheet, values in base units. */
export interface Preview {
  /** Names of the sheet's columns. */
  readonly columns: readonly string[];
  readonly first: readonly PreviewRow[];
  /** Rows with a held cell or with values that do not make sense. */
  readonly doubtful: readonly PreviewRow[];
}

export interface PreviewRow {
  /** Line of the file. */
  readonly line: number;
  readonly cells: readonly Cell[];
}

const MOST = 20;

/** The first rows, and the first of the doubtful ones. */
export function previewOf(
  filled: readonly Filled[],
  rows: number,
  doubtful: readonly number[],
  lineOf: (row: number) => number,
): Preview {
  const rowAt = (row: number): PreviewRow => ({
    line: lineOf(row),
    cells: filled.map(({ cells }) => cellAt(cells, row)),
  });
  const held = filled.flatMap(({ cells }) => firstKeys(cells.held));
  const doubted = [...new Set([...held, ...doubtful.slice(0, MOST)])].sort((a, b) => a - b).slice(0, MOST);
  return {
    columns: filled.map(({ column }) => column.name),
    first: Array.from({ length: Math.min(rows, MOST) }, (_, row) => rowAt(row)),
    doubtful: doubted.map(rowAt),
  };
}

function firstKeys(map: ReadonlyMap<number, unknown>): number[] {
  const keys: number[] = [];
  for (const key of map.keys()) {
    if (keys.length === MOST) break;
    keys.push(key);
  }
  return keys;
}
