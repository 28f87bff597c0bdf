import type { Dimension } from '../../units/dimension.ts';
import { readAndBind } from '../graph/formula.ts';
import type { ColumnNode } from '../graph/nodes.ts';
import type { State } from '../graph/state.ts';
import { type ColumnMeasure, infer } from './infer.ts';
import { aDate, dimensionIn, type Measure } from './measure.ts';

/**
 * What the columns of the book measure: as declared, else as their formula gives. Single cells of a column count as the
 * column does; a column that leans on itself gives nothing.
 */
export function columnMeasures(state: State): ColumnMeasure {
  const known = new Map<ColumnNode, Measure>();
  const told = (column: ColumnNode | undefined): Measure | undefined => {
    const declared = column?.column.dimension;
    if (declared) return { [declared]: 1 };
    if (column?.column.kind === 'date') return aDate;
    return column?.formula ? known.get(column) : 'unknown';
  };
  /** Works a column out from what is known; answers the columns that have to come first. */
  const workOut = (column: ColumnNode, begun: ReadonlySet<ColumnNode>): readonly ColumnNode[] => {
    const first: ColumnNode[] = [];
    const { bound, text } = column.formula!;
    const { measure } = infer(bound, text, (sheet, id) => {
      const read = state.graph.column(sheet, id);
      const seen = told(read);
      if (seen === undefined && !begun.has(read!)) first.push(read!);
      return seen ?? 'unknown';
    });
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

/** The dimension of a formula's result, where the book can tell. */
export function dimensionOf(
  state: State,
  text: string,
  scope: { readonly sheet?: string | undefined; readonly column: boolean },
): Dimension | undefined {
  const { bound } = readAndBind(text, state.index, scope);
  return dimensionIn(infer(bound, text, columnMeasures(state)).measure);
}
