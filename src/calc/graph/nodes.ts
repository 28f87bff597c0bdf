import type { Issue } from '../../../functions/core/issue.ts';
import { Kind, type Range, type Value } from '../../../functions/core/value.ts';
import type { Cells } from '../../book/cells.ts';
import type { Column } from '../../book/model.ts';
import { ColumnValues } from '../values/column-values.ts';
import { RowSet } from '../values/row-set.ts';
import type { Formula } from './formula.ts';

/** A cell that a formula of its own computes. */
export class CellNode {
  readonly is = 'cell';
  dirty = true;
  kind: Kind = Kind.blank;
  value: Value = null;
  /** Rows and columns of an array result that stands in the cells from here on. */
  spill: { readonly rows: number; readonly columns: number } | undefined;
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
  /** Columns whose row i reads rows [i + from, i + to]; a bound that does not move is given as it is. */
  readonly windows: {
    readonly reader: ColumnNode;
    readonly from: number;
    readonly to: number;
    readonly fromMoves: boolean;
    readonly toMoves: boolean;
  }[] = [];
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
