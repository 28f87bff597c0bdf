/** What the grid knows of a cell beside its text: one bit each. */
import { isPending } from '../../../functions/core/issue.ts';
import { Kind, type Range } from '../../../functions/core/value.ts';
import { CellKind, type Cells } from '../../book/cells.ts';
import type { Column } from '../../book/model.ts';

/** Marks of a cell in a tile, one bit each of 16. */
export const CellMark = {
  /** An error value; the text is its code. One that waits for a measure is `pending` instead. */
  error: 1,
  /** A text held where something else was expected. */
  held: 2,
  /** Own value or formula over a column formula. */
  override: 4,
  /** Computed by the column's formula. */
  computed: 8,
  /** A free formula of its own. */
  formula: 16,
  /** Written right-aligned: number or date. */
  numeric: 32,
  /** Has a name. */
  named: 64,
  /** A setting that matches nothing that its formulas look for. */
  unmatched: 128,
  /** An error value that only says that a measure is missing. */
  pending: 256,
} as const;

/** The marks of a cell: what it is, where it comes from. */
export function marksOf(column: Column, cells: Cells, range: Range, row: number, named: boolean): number {
  const own = cells.kinds[row];
  const shown = range.kinds[row];
  let marks = named ? CellMark.named : 0;
  if (shown === Kind.error)
    marks |= isPending(range.errors?.[row] ?? undefined) ? CellMark.pending : CellMark.error;
  if (shown === Kind.number || shown === Kind.date) marks |= CellMark.numeric;
  if (own === CellKind.held) marks |= CellMark.held;
  if (own === CellKind.formula) marks |= CellMark.formula;
  if (column.formula !== undefined) marks |= own === CellKind.blank ? CellMark.computed : CellMark.override;
  return marks;
}
