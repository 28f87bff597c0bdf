import type { Bound } from '../ast.ts';
import { builtIns } from '../builtins/index.ts';
import { walk } from '../language/walk.ts';

/** A column, by the ids of its sheet and itself. */
export const columnKey = (sheet: string, column: string): string => `${sheet}\u0000${column}`;

export interface CellRead {
  readonly key: string;
  readonly row: number;
  /** In a column's formula: the row is counted from this row. */
  readonly moves: boolean;
}

export interface RangeRead {
  readonly key: string;
  readonly from: number;
  /** The last row, itself read. */
  readonly to: number;
  readonly fromMoves: boolean;
  readonly toMoves: boolean;
}

/** What a formula reads. */
export interface Reads {
  /** Columns of which it reads this row's value. */
  readonly rows: ReadonlySet<string>;
  readonly whole: ReadonlySet<string>;
  readonly cells: readonly CellRead[];
  readonly ranges: readonly RangeRead[];
  /** Its value may differ each time: RAND, NOW and their kin. */
  readonly volatile: boolean;
}

const NONE: ReadonlySet<string> = new Set();

export function readsOf(bound: Bound): Reads {
  const rows = new Set<string>();
  const whole = new Set<string>();
  const cells: CellRead[] = [];
  const ranges: RangeRead[] = [];
  let volatile = false;
  walk(bound, (node) => {
    switch (node.type) {
      case 'row-of':
        rows.add(columnKey(node.sheet, node.column));
        break;
      case 'column-of':
        whole.add(columnKey(node.sheet, node.column));
        break;
      case 'named':
        cells.push({ key: columnKey(node.sheet, node.column), row: node.row, moves: false });
        break;
      case 'cell-of':
        cells.push({ key: columnKey(node.sheet, node.column), row: node.row, moves: node.rowMoves });
        break;
      case 'cells-of':
        for (const column of node.columns) {
          const { from, to, fromMoves, toMoves } = node;
          ranges.push({ key: columnKey(node.sheet, column), from, to, fromMoves, toMoves });
        }
        break;
      case 'call':
        if (builtIns.get(node.name)?.volatile) volatile = true;
        break;
      default:
    }
    return true;
  });
  return {
    rows: rows.size > 0 ? rows : NONE,
    whole: whole.size > 0 ? whole : NONE,
    cells,
    ranges,
    volatile,
  };
}
