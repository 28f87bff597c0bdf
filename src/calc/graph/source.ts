/** The present values of a book, for whatever computes. */
import { Kind, type Range, rangeOf, type Value, valueAt } from '../../../functions/core/value.ts';
import type { Place, Spot } from '../cells/place.ts';
import type { Graph } from './graph.ts';

export const nothing: Range = rangeOf(0, 1, []);
const blank: Spot = { kind: Kind.blank, value: null };

/** The present values of a book, for plans and free formulas alike. Cells beyond the last row are blank. */
export function sourceOf(graph: Graph): Place {
  const column = (sheet: string, id: string): Range => graph.column(sheet, id)?.range() ?? nothing;
  const cell = (sheet: string, id: string, row: number): Value => {
    const range = column(sheet, id);
    return row < range.rows ? valueAt(range, row) : null;
  };
  const spot = (sheet: string, id: string, row: number): Spot => {
    const range = column(sheet, id);
    return row < range.rows ? { kind: range.kinds[row] as Kind, value: valueAt(range, row) } : blank;
  };
  return { source: { column, cell }, row: 0, evaluation: 0, spot };
}
