/** Which formulas read which columns and cells, and the order in which they are computed. */
import { type Issue, issue } from '../../../functions/core/issue.ts';
import type { Book } from '../../book/model.ts';
import { limits } from '../limits.ts';
import type { Formulas } from './formula.ts';
import { CellNode, ColumnNode, Readers } from './graph-nodes.ts';
import { orderOf, pathAround } from './order.ts';
import { columnKey, type RangeRead } from './reads.ts';

export type Computed = ColumnNode | CellNode;

/** Stands for all values of a column that has formulas in its cells: read by whoever reads the column. */
class Hub {
  constructor(readonly column: ColumnNode) {}
}
type Step = Computed | Hub;

/**
 * All columns of a book and all cells with formulas, who reads whom, and the order in which they are computed. The book
 * itself is never changed.
 */
export class Graph {
  readonly columns = new Map<string, ColumnNode>();
  /** Everything that is computed, each after what it reads. */
  order: readonly Computed[] = [];
  private hubs = new Map<ColumnNode, Hub>();

  column(sheet: string, column: string): ColumnNode | undefined {
    return this.columns.get(columnKey(sheet, column));
  }

  /** What computes a cell, or undefined when it holds the book's own value. */
  provider(column: ColumnNode, row: number): Computed | undefined {
    const own = column.own.get(row) ?? column.covered.get(row);
    return own ?? (column.computes(row) ? column : undefined);
  }

  /**
   * Works out anew who reads whom and the order. Nodes in circles get their error, and those that `stuck` keeps keep
   * it; circles found are entered there. Answers the nodes whose error is another now.
   */
  link(formulas: Formulas, book: Book, stuck: Stuck): readonly Computed[] {
    this.hubs = new Map();
    for (const column of this.columns.values()) {
      column.readers = new Readers();
      if (column.cellByCell) this.together(column);
    }
    let { sorted, circles } = this.sort();
    if (circles.length > 0 && this.loosen(circles, formulas)) ({ sorted, circles } = this.sort());
    this.order = sorted.filter((step): step is Computed => !(step instanceof Hub));
    for (const node of this.order) this.announce(node);
    return this.markCircles(circles, book, stuck);
  }

  /**
   * Columns with formulas that formulas which may give an array read from, by whatever way, and their own; undefined
   * while none of them has given an array to another.
   */
  arraysFrom(): ReadonlySet<ColumnNode> | undefined {
    const columns = new Set<ColumnNode>();
    const seen = new Set<Step>();
    const open: Step[] = [];
    for (const node of this.order)
      if (node.is === 'cell' && isOwn(node) && node.formula.mayGiveArray()) open.push(node);
    let entangled = false;
    for (let step = open.pop(); step; step = open.pop()) {
      columns.add(step instanceof ColumnNode ? step : step.column);
      for (const read of this.readBy(step)) {
        entangled ||= read instanceof CellNode && read.array !== undefined;
        if (seen.has(read)) continue;
        seen.add(read);
        open.push(read);
      }
    }
    return entangled ? columns : undefined;
  }

  private sort() {
    const reads = (step: Step): Iterable<Step> => this.readBy(step);
    return orderOf<Step>(this.computed(), reads);
  }

  private *computed(): Iterable<Computed> {
    for (const column of this.columns.values()) {
      if (column.formula && !column.cellByCell) yield column;
      yield* column.own.values();
    }
  }

  private *readBy(step: Step): Iterable<Step> {
    if (step instanceof Hub) {
      const { column } = step;
      if (column.formula && !column.cellByCell) yield column;
      yield* column.own.values();
      yield* new Set(column.covered.values());
      return;
    }
    const { reads } = step.formula!;
    for (const key of reads.rows) {
      const column = this.columns.get(key);
      if (!column) continue;
      if (step.is === 'column') yield* this.all(column);
      else yield* this.one(column, step.row);
    }
    for (const key of reads.whole) {
      const column = this.columns.get(key);
      if (column) yield* this.all(column);
    }
    for (const { key, row, moves } of reads.cells) {
      const column = this.columns.get(key);
      if (!column) continue;
      if (!moves) yield* this.one(column, row);
      else if (step.is === 'column') yield* this.all(column);
      else yield* this.one(column, row + step.row);
    }
    for (const range of reads.ranges) {
      const column = this.columns.get(range.key);
      if (!column) continue;
      const moves = range.fromMoves || range.toMoves;
      if (moves && step.is === 'column') yield* this.all(column);
      else yield* this.some(column, ...bounds(range, step.is === 'cell' ? step.row : 0));
    }
  }

  private *one(column: ColumnNode, row: number): Iterable<Computed> {
    const provider = this.provider(column, row);
    if (provider) yield provider;
  }

  private *all(column: ColumnNode): Iterable<Step> {
    if (column.own.size === 0 && column.covered.size === 0) {
      if (column.formula && !column.cellByCell) yield column;
      return;
    }
    let hub = this.hubs.get(column);
    if (!hub) {
      hub = new Hub(column);
      this.hubs.set(column, hub);
    }
    yield hub;
  }

  private *some(column: ColumnNode, from: number, to: number): Iterable<Step> {
    if (column.formula && !column.cellByCell) yield column;
    for (const cells of [column.own, column.covered]) {
      if (cells.size > to - from) {
        for (let row = from; row <= to; row++) {
          const cell = cells.get(row);
          if (cell) yield cell;
        }
      } else for (const [row, cell] of cells) if (row >= from && row <= to) yield cell;
    }
  }

  /** Enters a node with everybody it reads. */
  private announce(node: Computed): void {
    const { reads } = node.formula!;
    const readers = (key: string): Readers | undefined => this.columns.get(key)?.readers;
    for (const key of reads.rows) {
      if (node.is === 'column') readers(key)?.byRow.add(node);
      else atRow(readers(key), node.row, node);
    }
    for (const key of reads.whole) readers(key)?.whole.add(node);
    for (const { key, row, moves } of reads.cells) {
      if (!moves) atRow(readers(key), row, node);
      else if (node.is === 'cell') atRow(readers(key), row + node.row, node);
      else
        readers(key)?.movingRanges.push({ reader: node, from: row, to: row, fromMoves: true, toMoves: true });
    }
    for (const range of reads.ranges) {
      const { key, from, to, fromMoves, toMoves } = range;
      if (node.is === 'column' && (fromMoves || toMoves))
        readers(key)?.movingRanges.push({ reader: node, from, to, fromMoves, toMoves });
      else {
        const [first, last] = bounds(range, node.is === 'cell' ? node.row : 0);
        readers(key)?.ranges.push({ reader: node, from: first, to: last });
      }
    }
  }

  /**
   * A circle of columns need not be one of cells: a row may lean on the row above through another column. Columns in a
   * circle that read one another row by row are taken apart into cells. Answers whether any was.
   */
  private loosen(circles: readonly (readonly Step[])[], formulas: Formulas): boolean {
    let loosened = false;
    for (const circle of circles) {
      if (!circle.some((step) => step instanceof CellNode)) continue;
      for (const step of circle) {
        if (!(step instanceof ColumnNode) || step.cells.length > limits.cellByCell) continue;
        step.cellByCell = true;
        loosened = true;
        const formula = formulas.get(step.column.formula!, step.sheet, true);
        for (let row = 0; row < step.cells.length; row++)
          if (step.cells.kinds[row] === 0 && !step.own.has(row)) step.ownFormula(row, formula);
      }
    }
    if (loosened) this.hubs = new Map();
    return loosened;
  }

  /** Puts a column that was taken apart together again; whether it must be taken apart is found out anew. */
  private together(column: ColumnNode): void {
    column.cellByCell = false;
    for (const [row, cell] of [...column.own]) if (!isOwn(cell)) column.own.delete(row);
    column.dirty.addAll();
  }

  /** A way around the circle by names; the same whatever came first. */
  private pathOf(circle: readonly Step[], book: Book): string {
    const byName = new Map(
      circle.map((step) => [step, nameOf(step instanceof Hub ? step.column : step, book)]),
    );
    const members = [...circle].sort(
      (a, b) =>
        Number(a instanceof Hub) - Number(b instanceof Hub) || (byName.get(a)! < byName.get(b)! ? -1 : 1),
    );
    const names = pathAround(members, (step) => this.readBy(step)).flatMap((step) =>
      step instanceof Hub ? [] : byName.get(step)!,
    );
    if (names.length === 1 || names[0] !== names.at(-1)) names.push(names[0]!);
    const shown = names.length > 12 ? [...names.slice(0, 11), '…', names.at(-1)] : names;
    return shown.join(' → ');
  }

  private markCircles(circles: readonly (readonly Step[])[], book: Book, stuck: Stuck): readonly Computed[] {
    for (const circle of circles) {
      const cycle = issue('#CYCLE!', 'cycle', { details: { path: this.pathOf(circle, book) } });
      for (const step of circle)
        if (!(step instanceof Hub || stuck.has(placeIn(step)))) stuck.set(placeIn(step), cycle);
    }
    const changed: Computed[] = [];
    for (const node of this.order) {
      const now = stuck.get(placeIn(node));
      if (now?.details?.path !== node.cycle?.details?.path) changed.push(node);
      node.cycle = now;
    }
    return changed;
  }
}

/** Nodes in circles, by place, since cells of a column that is taken apart are made anew each time. */
export type Stuck = Map<string, Issue>;
export const placeIn = (node: Computed): string =>
  node.is === 'cell' ? `${node.column.key}\u0000${node.row}` : node.key;

/** The cell's formula is written in it: it is no row of its column's formula. */
export const isOwn = (cell: CellNode): boolean => cell.column.cells.formulas.has(cell.row);

function atRow(readers: Readers | undefined, row: number, node: Computed): void {
  if (!readers) return;
  const at = readers.cells.get(row);
  if (at) at.add(node);
  else readers.cells.set(row, new Set([node]));
}

/** First and last row of a range for a formula in this row. */
function bounds({ from, to, fromMoves, toMoves }: RangeRead, row: number): [number, number] {
  const first = fromMoves ? from + row : from;
  const last = toMoves ? to + row : to;
  return first <= last ? [first, last] : [last, first];
}

/** How sentences call a node: `roster.lean`, `summary.mean row 3`, or the name given to the cell. */
export function nameOf(node: Computed, book: Book): string {
  const column = node.is === 'cell' ? node.column : node;
  const sheet = book.sheets.find((s) => s.id === column.sheet);
  const name = `${sheet?.name ?? column.sheet}.${column.column.name}`;
  if (node.is === 'column') return name;
  for (const named of book.names.values())
    if (named.sheet === column.sheet && named.column === column.column.id && named.row === node.row)
      return named.name;
  return `${name} row ${node.row + 1}`;
}

/** How people know it: the heading of a column, with the row of a cell, or the name given to the cell. */
export function calledOf(node: Computed, book: Book): string {
  if (node.is === 'column') return node.column.label;
  const label = node.column.column.label;
  const name = nameOf(node, book);
  return name.endsWith(` row ${node.row + 1}`) ? `${label}, row ${node.row + 1}` : name;
}
