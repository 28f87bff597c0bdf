import { readAndBind } from '../graph/formula.ts';
import type { ColumnNode } from '../graph/graph-nodes.ts';
import type { State } from '../graph/state.ts';
import { type CellMeasure, type ColumnMeasure, infer } from './infer.ts';
import { aDate, declaredMeasure, type Measure } from './measure.ts';

/**
 * What the columns of the book measure: as declared, else as their formula gives. Single cells of a column count as the
 * column does; a column that leans on itself gives nothing.
 */
export function columnMeasures(state: State): ColumnMeasure {
  const known = new Map<ColumnNode, Measure>();
  const settings = settingMeasures(state);
  const told = (column: ColumnNode | undefined): Measure | undefined => {
    const declared = column && declaredMeasure(column.column);
    if (declared) return declared;
    if (column?.column.kind === 'date') return aDate;
    return column?.formula ? known.get(column) : 'unknown';
  };
  /** Works a column out from what is known; answers the columns that have to come first. */
  const workOut = (column: ColumnNode, begun: ReadonlySet<ColumnNode>): readonly ColumnNode[] => {
    const first: ColumnNode[] = [];
    const { bound, text } = column.formula!;
    const measureOf: ColumnMeasure = (sheet, id) => {
      const read = state.graph.column(sheet, id);
      const seen = told(read);
      if (seen === undefined && !begun.has(read!)) first.push(read!);
      return seen ?? 'unknown';
    };
    const { measure } = infer(bound, text, measureOf, settings);
    if (first.length === 0) known.set(column, measure === 'any' ? 'unknown' : measure);
    return first;
  };
  return (sheet, id) => {
    const asked = state.graph.column(sheet, id);
    // A stack of its own: chains of columns are longer than the program's stack is deep.
    const open = told(asked) === undefined ? [asked!] : [];
    const begun = new Set<ColumnNode>();
    for (let column = open.at(-1); column; column = open.at(-1)) {
      begun.add(column);
      const first = told(column) === undefined ? workOut(column, begun) : [];
      if (first.length === 0) open.pop();
      open.push(...first);
    }
    return told(asked)!;
  };
}

/** What named cells measure that were typed with a unit of their own. */
export function settingMeasures({ index, graph }: State): CellMeasure {
  const known = new Map<string, Measure>();
  for (const named of index.names.values()) {
    const measure = declaredMeasure(named);
    if (measure && !graph.column(named.sheet, named.column)?.own.has(named.row))
      known.set(keyOf(named), measure);
  }
  return (sheet, column, row) => known.get(keyOf({ sheet, column, row }));
}

const keyOf = ({ sheet, column, row }: { sheet: string; column: string; row: number }): string =>
  `${row} ${sheet} ${column}`;
