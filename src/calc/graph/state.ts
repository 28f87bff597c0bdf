import type { Book } from '../../book/model.ts';
import type { Fresh, Place } from '../api.ts';
import type { Place as CellPlace } from '../cells/place.ts';
import { type BookIndex, indexBook } from '../language/book-index.ts';
import { Formulas } from './formula.ts';
import { type Computed, Graph } from './graph.ts';
import { type CellNode, type ColumnNode, rowsThatRead } from './graph-nodes.ts';
import { sourceOf } from './source.ts';

/** Everything that calculation keeps about a book. */
export class State {
  readonly graph = new Graph();
  readonly formulas: Formulas;
  /** Where the free formula that is being evaluated stands. */
  readonly place: CellPlace;
  index: BookIndex;
  /** Who reads whom has to be worked out again. */
  unlinked = true;
  /** What is being computed at this moment, for whoever watches over it. */
  current: Place | undefined;
  /** Formulas that took too long, by place: their text, so that a changed one is tried again. */
  readonly hung = new Map<string, string>();
  /** Cells whose result is an array, or was when arrays were laid out last. */
  readonly arrays = new Set<CellNode>();
  /** Sheets on which arrays have to be laid out again. */
  readonly unsettled = new Set<string>();
  /**
   * Present where array results hang on array results: what they come to depends on where the work began (see compute).
   * Columns with formulas that have to do with it.
   */
  entangled: Set<ColumnNode> | undefined;
  private readonly fresh = new Map<ColumnNode, { from: number; to: number }>();

  constructor(readonly book: Book) {
    this.index = indexBook(book);
    this.place = sourceOf(this.graph);
    this.formulas = new Formulas(this.index, this.place);
  }

  /** Values of these rows have changed: readers become dirty, and whoever asks for the column gets a new range. */
  touch(column: ColumnNode, from: number, to: number): void {
    if (to <= from) return;
    column.values?.changed();
    const seen = this.fresh.get(column);
    if (seen) {
      seen.from = Math.min(seen.from, from);
      seen.to = Math.max(seen.to, to);
    } else this.fresh.set(column, { from, to });
    const { byRow, whole, cells, ranges, movingRanges } = column.readers;
    for (const reader of byRow) reader.dirty.add(from, to);
    for (const reader of whole) invalidate(reader);
    if (cells.size > 0) {
      if (to - from <= cells.size) {
        for (let row = from; row < to; row++) for (const reader of cells.get(row) ?? []) invalidate(reader);
      } else
        for (const [row, readers] of cells)
          if (row >= from && row < to) for (const r of readers) invalidate(r);
    }
    for (const range of ranges) if (range.from < to && range.to >= from) invalidate(range.reader);
    for (const range of movingRanges) {
      const { reader } = range;
      const [first, last] = rowsThatRead(range, from, to);
      reader.dirty.add(Math.max(0, first), Math.max(0, last));
    }
  }

  /** Array results lie on this sheet, or tried to. */
  hasArrays(sheet: string): boolean {
    for (const { column } of this.arrays) if (column.sheet === sheet) return true;
    for (const column of this.entangled ?? []) if (column.sheet === sheet) return true;
    return false;
  }

  /** Takes what has changed since the last time. */
  takeFresh(): readonly Fresh[] {
    const all: Fresh[] = [];
    for (const [{ sheet, column, cells }, { from, to }] of this.fresh)
      if (this.graph.column(sheet, column.id))
        all.push({ sheet, column: column.id, from, to: Math.min(to, cells.length) });
    this.fresh.clear();
    return all;
  }
}

/** Marks a node as out of date, all of it. */
export function invalidate(node: Computed): void {
  if (node.is === 'cell') node.dirty = true;
  else node.dirty.addAll();
}

export const placeOf = (node: Computed): Place =>
  node.is === 'cell'
    ? { sheet: node.column.sheet, column: node.column.column.id, row: node.row }
    : { sheet: node.sheet, column: node.column.id };

export const placeKey = ({ sheet, column, row }: Place): string =>
  `${sheet}\u0000${column}\u0000${row ?? ''}`;
