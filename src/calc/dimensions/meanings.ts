/**
 * What the number in a cell stands for where its column does not say: a date, a quantity in a unit, a rate. Read off the
 * cell's formula, so that a free cell and a setting show more than a bare figure.
 */
import { CellKind } from '../../book/cells.ts';
import { type Dimension, dimensions } from '../../units/dimension.ts';
import type { Meaning } from '../api.ts';
import type { Bound } from '../ast.ts';
import type { Formula } from '../graph/formula.ts';
import type { CellNode } from '../graph/nodes.ts';
import type { State } from '../graph/state.ts';
import { columnMeasures } from './dimension-of.ts';
import { type ColumnMeasure, infer } from './infer.ts';
import { aDate, dimensionIn, isDate, type Measure, rateIn } from './measure.ts';

interface Known {
  readonly measure: Measure;
  readonly meaning: Meaning | undefined;
}
const nothing: Known = { measure: 'unknown', meaning: undefined };

/** Good until the book changes next. */
export class Meanings {
  private readonly known = new Map<CellNode, Known>();
  private columnMeasure: ColumnMeasure | undefined;

  constructor(private readonly state: State) {}

  of(sheet: string, column: string, row: number): Meaning | undefined {
    const cell = this.cell(sheet, column, row);
    return cell && this.work(cell).meaning;
  }

  private cell(sheet: string, column: string, row: number): CellNode | undefined {
    const node = this.state.graph.column(sheet, column);
    return node && node.column.dimension === undefined && node.column.kind === 'number'
      ? node.own.get(row)
      : undefined;
  }

  private work(cell: CellNode): Known {
    const known = this.known.get(cell);
    if (known) return known;
    // A cell that leans on itself gives nothing.
    this.known.set(cell, nothing);
    this.columnMeasure ??= columnMeasures(this.state);
    const { bound, text } = cell.formula;
    const { measure } = infer(bound, text, this.columnMeasure, (sheet, column, row) => {
      const other = this.cell(sheet, column, row);
      if (other) return this.work(other).measure;
      return this.isDated(sheet, column, row) ? aDate : undefined;
    });
    const made = { measure, meaning: this.meaning(measure, cell.formula) };
    this.known.set(cell, made);
    return made;
  }

  private isDated(sheet: string, column: string, row: number): boolean {
    const node = this.state.graph.column(sheet, column);
    return node !== undefined && row < node.cells.length && node.cells.kinds[row] === CellKind.date;
  }

  private meaning(measure: Measure, { bound }: Formula): Meaning | undefined {
    if (isDate(measure)) return { is: 'date' };
    const dimension = dimensionIn(measure);
    if (dimension) return { is: 'quantity', dimension, unit: this.unitFor(dimension, bound) };
    const rate = rateIn(measure);
    if (!rate) return undefined;
    return rate.dimension === undefined
      ? { is: 'rate', per: rate.per }
      : { is: 'rate', ...rate, dimension: rate.dimension, unit: this.unitFor(rate.dimension, bound) };
  }

  /** The unit that the first column of this dimension shows among those that a formula reads, else the base unit. */
  private unitFor(dimension: Dimension, bound: Bound): string {
    for (const { sheet, column, row } of readsIn(bound)) {
      const read = this.state.graph.column(sheet, column);
      if (read?.column.dimension === dimension && read.column.unit) return read.column.unit;
      const other = row === undefined ? undefined : this.cell(sheet, column, row);
      const meaning = other && this.work(other).meaning;
      if (meaning && meaning.is !== 'date' && meaning.dimension === dimension && meaning.unit)
        return meaning.unit;
    }
    return dimensions[dimension];
  }
}

interface Read {
  readonly sheet: string;
  readonly column: string;
  readonly row?: number;
}

function* readsIn(bound: Bound): Iterable<Read> {
  switch (bound.type) {
    case 'row-of':
    case 'column-of':
    case 'named':
      yield bound;
      break;
    case 'cell-of':
      yield { sheet: bound.sheet, column: bound.column, ...(bound.rowMoves ? {} : { row: bound.row }) };
      break;
    case 'cells-of':
      for (const column of bound.columns) yield { sheet: bound.sheet, column };
      break;
    case 'unary':
    case 'percent':
      yield* readsIn(bound.operand);
      break;
    case 'binary':
      yield* readsIn(bound.left);
      yield* readsIn(bound.right);
      break;
    case 'call':
      for (const arg of bound.args) yield* readsIn(arg);
      break;
    default:
  }
}
