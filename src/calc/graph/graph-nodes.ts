import type { Issue } from '../../../functions/core/issue.ts';
import { Kind, type Range, type Value } from '../../../functions/core/value.ts';
import type { Cells } from '../../book/cells.ts';
import type { Column } from '../../book/model.ts';
import { ColumnValues } from '../values/column-values.ts';
import { RowSet } from '../values/row-set.ts';
import type { Formula } from './formula.ts';

/** What was decided about an array result of this size: the columns that it lies over, or why it finds no room. */
export interface SpillLayout {
  readonly rows: number;
  readonly columns: number;
  readonly covers: readonly ColumnNode[];
  readonly obstacle: Issue | undefined;
}

/** A cell that a formula of its own computes. */
export class CellNode {
  readonly is = 'cell';
  dirty = true;
  /** What the cell shows, as its readers have seen it. */
  kind: Kind = Kind.blank;
  value: Value = null;
  /** The formula's last result, where it is more than one cell. */
  array: Range | undefined;
  layout: SpillLayout | undefined;
  cycle: Issue | undefined;

  constructor(
    readonly column: ColumnNode,
    readonly row: number,
    public formula: Formula,
  ) {}
}

/** Who has to know when values of a column change. */
export class Readers {
  /** Columns whose formula reads this row's value. */
  readonly byRow = new Set<ColumnNode>();
  readonly whole = new Set<ColumnNode | CellNode>();
  readonly cells = new Map<number, Set<ColumnNode | CellNode>>();
  readonly ranges: { readonly reader: ColumnNode | CellNode; readonly from: number; readonly to: number }[] =
    [];
  readonly movingRanges: MovingRange[] = [];
}

/** A column whose row i reads rows [i + from, i + to]; a bound that does not move is given as it is. */
export interface MovingRange {
  readonly reader: ColumnNode;
  readonly from: number;
  readonly to: number;
  readonly fromMoves: boolean;
  readonly toMoves: boolean;
}

/**
 * Rows [first, last) of a moving range's reader that read any of rows [from, to); they may lie outside the sheet. Where one
 * bound moves past the other the range goes on, on the other side of the fixed one.
 */
export function rowsThatRead(range: MovingRange, from: number, to: number): readonly [number, number] {
  const { fromMoves, toMoves } = range;
  if (fromMoves && toMoves) {
    const [low, high] = range.from <= range.to ? [range.from, range.to] : [range.to, range.from];
    return [from - high, to - low];
  }
  const [fixed, moving] = fromMoves ? [range.to, range.from] : [range.from, range.to];
  if (to <= fixed) return [Number.NEGATIVE_INFINITY, to - moving];
  return [from <= fixed ? Number.NEGATIVE_INFINITY : from - moving, Number.POSITIVE_INFINITY];
}

/** A column of the book with its values, and its formula if it has one. */
export class ColumnNode {
  readonly is = 'column';
  formula: Formula | undefined;
  /** Rows of the column's formula that have to be computed. */
  readonly dirty = new RowSet();
  /** Cells with formulas of their own. */
  readonly own = new Map<number, CellNode>();
  /** Cells that another cell's array result covers. */
  readonly covered = new Map<number, CellNode>();
  /** The column's formula leans on single cells of itself: each row is a cell of its own. */
  cellByCell = false;
  readers = new Readers();
  cycle: Issue | undefined;
  /** Milliseconds that one row took lately. */
  cost = 0;
  /** Present as soon as the column holds anything but the book's own values. */
  values: ColumnValues | undefined;
  private view: Range | undefined;
  private seen = -1;

  constructor(
    readonly key: string,
    readonly sheet: string,
    public column: Column,
    public cells: Cells,
  ) {}

  /** True when some value is not simply the book's. */
  get mixed(): boolean {
    return (
      this.formula !== undefined || this.own.size > 0 || this.covered.size > 0 || this.cells.held.size > 0
    );
  }

  /** True when the column's own formula computes this row. */
  computes(row: number): boolean {
    return this.formula !== undefined && !this.cellByCell && this.cells.kinds[row] === 0;
  }

  /** Gives a row a formula of its own. Until that is computed the cell shows what it showed before. */
  ownFormula(row: number, formula: Formula): void {
    const cell = new CellNode(this, row, formula);
    if (this.values && row < this.values.rows) {
      cell.kind = this.values.kinds[row] as Kind;
      cell.value = this.values.at(row);
    }
    this.own.set(row, cell);
  }

  /** Shows what the book holds in rows [from, to): cells with formulas are blank until they are computed. */
  take(from: number, to: number): void {
    if (!this.values) return;
    this.values.take(this.cells, from, to);
    for (const [, cell] of inRows(this.own, from, to)) {
      cell.kind = Kind.blank;
      cell.value = null;
    }
  }

  /** Present values; a new object whenever one of them has changed. */
  range(): Range {
    if (this.values) return this.values.range();
    const { version, length, kinds, numbers, texts } = this.cells;
    if (!this.view || this.seen !== version || this.view.kinds !== kinds || this.view.numbers !== numbers) {
      this.view = { rows: length, columns: 1, kinds, numbers, texts, errors: null };
      this.seen = version;
    }
    return this.view;
  }

  /** Values that may be written: made from the book's at first use. */
  writable(): ColumnValues {
    if (!this.values) {
      this.values = new ColumnValues(this.cells.length);
      this.values.take(this.cells, 0, this.cells.length);
    }
    return this.values;
  }
}

/** Entries of rows [from, to), found the cheaper way. */
export function inRows<T>(
  map: ReadonlyMap<number, T>,
  from: number,
  to: number,
): readonly (readonly [number, T])[] {
  if (map.size === 0) return [];
  if (to - from > map.size) return [...map].filter(([row]) => row >= from && row < to);
  const found: [number, T][] = [];
  for (let row = from; row < to; row++) {
    const value = map.get(row);
    if (value !== undefined) found.push([row, value]);
  }
  return found;
}
