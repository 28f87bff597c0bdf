import type { Dimension } from '../../units/dimension.ts';
import { readAndBind } from '../graph/formula.ts';
import type { State } from '../graph/state.ts';
import { type ColumnMeasure, infer } from './infer.ts';
import { dimensionIn, type Measure } from './measure.ts';

/**
 * What the columns of the book measure: as declared, else as their formula gives. Single cells of a column count as the
 * column does.
 */
export function columnMeasures(state: State): ColumnMeasure {
  const known = new Map<string, Measure>();
  const measure = (sheet: string, id: string): Measure => {
    const column = state.graph.column(sheet, id);
    if (!column) return 'unknown';
    const declared = column.column.dimension;
    if (declared) return { [declared]: 1 };
    const seen = known.get(column.key);
    if (seen) return seen;
    known.set(column.key, 'unknown');
    if (!column.formula) return 'unknown';
    const found = infer(column.formula.bound, column.formula.text, measure).measure;
    known.set(column.key, found === 'any' ? 'unknown' : found);
    return known.get(column.key)!;
  };
  return measure;
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
