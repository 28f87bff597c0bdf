/**
 * What the number in a cell stands for where its column does not say: a date, a quantity in a unit, a rate. Read off the
 * cell's formula, so that a free cell and a setting show more than a bare figure.
 */
import { CellKind } from '../../book/cells.ts';
import { type Dimension, dimensions } from '../../units/dimension.ts';
import type { Meaning } from '../api.ts';
import type { Bound } from '../ast.ts';
import { readAndBind } from '../graph/formula.ts';
import type { CellNode } from '../graph/graph-nodes.ts';
import type { State } from '../graph/state.ts';
import { columnMeasures, settingMeasures } from './dimension-of.ts';
import { type CellMeasure, type ColumnMeasure, infer } from './infer.ts';
import { aDate, declaredMeasure, dimensionIn, isDate, type Measure, rateIn } from './measure.ts';

interface Known {
  readonly measure: Measure;
  readonly meaning: Meaning | undefined;
}
const nothing: Known = { measure: 'unknown', meaning: undefined };

/** Good until the book changes next. */
export class Meanings {
  private readonly known = new Map<CellNode, Known>();
  private columns: ColumnMeasure | undefined;
  private settings: CellMeasure | undefined;

  constructor(private readonly state: State) {}

  of(sheet: string, column: string, row: number): Meaning | undefined {
    const cell = this.cell(sheet, column, row);
    return cell ? this.work(cell).meaning : this.ofSetting(sheet, column, row);
  }

  /** In base units, as a column without a unit of its own shows its numbers. */
  ofColumn(sheet: string, column: string): Meaning | undefined {
    const of = this.state.graph.column(sheet, column);
    if (!of?.formula || of.column.kind !== 'number' || declaredMeasure(of.column)) return undefined;
    return this.meaning(this.columnMeasure(sheet, column), undefined);
  }

  ofFormula(
    text: string,
    scope: { readonly sheet?: string | undefined; readonly column: boolean },
  ): Meaning | undefined {
    const { bound } = readAndBind(text, this.state.index, scope);
    return this.meaning(infer(bound, text, this.columnMeasure, this.settingMeasure).measure, bound);
  }

  /** A number typed with a unit into a named cell. */
  private ofSetting(sheet: string, column: string, row: number): Meaning | undefined {
    const measure = this.settingMeasure(sheet, column, row);
    if (!measure) return undefined;
    const named = [...this.state.index.names.values()].find(
      (one) => one.sheet === sheet && one.column === column && one.row === row,
    );
    const meaning = this.meaning(measure, undefined);
    return meaning && meaning.is !== 'date' && named?.unit ? { ...meaning, unit: named.unit } : meaning;
  }

  private get columnMeasure(): ColumnMeasure {
    this.columns ??= columnMeasures(this.state);
    return this.columns;
  }

  private get settingMeasure(): CellMeasure {
    this.settings ??= settingMeasures(this.state);
    return this.settings;
  }

  private cell(sheet: string, column: string, row: number): CellNode | undefined {
    const node = this.state.graph.column(sheet, column);
    return node && !declaredMeasure(node.column) && node.column.kind === 'number'
      ? node.own.get(row)
      : undefined;
  }

  private work(cell: CellNode): Known {
    const known = this.known.get(cell);
    if (known) return known;
    // A cell that leans on itself gives nothing.
    this.known.set(cell, nothing);
    const { bound, text } = cell.formula;
    const { measure } = infer(bound, text, this.columnMeasure, (sheet, column, row) => {
      const other = this.cell(sheet, column, row);
      if (other) return this.work(other).measure;
      const typed = this.settingMeasure(sheet, column, row);
      if (typed) return typed;
      return this.isDated(sheet, column, row) ? aDate : undefined;
    });
    const made = { measure, meaning: this.meaning(measure, cell.formula.bound) };
    this.known.set(cell, made);
    return made;
  }

  private isDated(sheet: string, column: string, row: number): boolean {
    const node = this.state.graph.column(sheet, column);
    return node !== undefined && row < node.cells.length && node.cells.kinds[row] === CellKind.date;
  }

  private meaning(measure: Measure, bound: Bound | undefined): Meaning | undefined {
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
  private unitFor(dimension: Dimension, bound: Bound | undefined): string {
    for (const { sheet, column, row } of bound ? readsIn(bound) : []) {
      const read = this.state.graph.column(sheet, column);
      if (read?.column.dimension === dimension && read.column.unit) return read.column.unit;
      const meaning = row === undefined ? undefined : this.of(sheet, column, row);
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
