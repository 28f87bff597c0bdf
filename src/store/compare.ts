import { type Cell, type CellBlock, CellKind, cellOf } from '../book/cells.ts';
import { type Book, type Column, type PartName, partNames, type Sheet } from '../book/model.ts';
import { type Alignment, alignRows } from './align.ts';

/** A field of a record that is not what it was. */
export interface FieldChange {
  readonly field: string;
  readonly before: unknown;
  readonly after: unknown;
}

/** One way in which a later book differs from an earlier one. Sheets and columns by name, rows by index from 0 in the later book. */
export type Difference =
  | { readonly what: 'title'; readonly before: string; readonly after: string }
  | { readonly what: 'sheet added' | 'sheet removed'; readonly sheet: string; readonly rows: number }
  | { readonly what: 'sheet changed'; readonly sheet: string; readonly fields: readonly FieldChange[] }
  | { readonly what: 'sheets reordered' }
  | { readonly what: 'column added' | 'column removed'; readonly sheet: string; readonly column: string }
  | {
      readonly what: 'column changed';
      readonly sheet: string;
      readonly column: string;
      readonly fields: readonly FieldChange[];
    }
  | { readonly what: 'columns reordered' | 'rows reordered'; readonly sheet: string }
  /** For removed rows, `row` is where they stood in the earlier book. */
  | {
      readonly what: 'rows added' | 'rows removed';
      readonly sheet: string;
      readonly row: number;
      readonly count: number;
    }
  | {
      readonly what: 'cell';
      readonly sheet: string;
      readonly column: string;
      readonly row: number;
      readonly before: Cell;
      readonly after: Cell;
    }
  | { readonly what: 'name added' | 'name removed' | 'name changed'; readonly name: string }
  | {
      readonly what: 'record added' | 'record removed' | 'record changed';
      readonly part: PartName;
      readonly key: string;
    };

export interface Comparison {
  readonly differences: readonly Difference[];
  /** Cells that differ, in rows and columns that both books have; listed up to a limit, counted to the end. */
  readonly cells: number;
}

/** What differs between two states of a book. Sheets and columns are the same when their ids are. Changes neither. */
export function compareBooks(earlier: Book, later: Book, most = 10_000): Comparison {
  const out: Difference[] = [];
  if (earlier.title !== later.title) out.push({ what: 'title', before: earlier.title, after: later.title });
  const { gone, come, kept, reordered } = match(earlier.sheets, later.sheets);
  for (const { name, rows } of gone) out.push({ what: 'sheet removed', sheet: name, rows });
  for (const { name, rows } of come) out.push({ what: 'sheet added', sheet: name, rows });
  if (reordered) out.push({ what: 'sheets reordered' });
  let cells = 0;
  for (const [a, b] of kept) cells += compareSheets(a, b, out, most - cells);
  compareNames(earlier, later, out);
  for (const part of partNames)
    keyed(earlier.parts[part], later.parts[part], (is, key) => out.push({ what: `record ${is}`, part, key }));
  return { differences: out, cells };
}

/** Answers the number of cells that differ; lists at most `most` of them. */
function compareSheets(a: Sheet, b: Sheet, out: Difference[], most: number): number {
  const sheet = b.name;
  const fields = changed(pick(a), pick(b));
  if (fields.length) out.push({ what: 'sheet changed', sheet, fields });
  const { gone, come, kept, reordered } = match(a.columns, b.columns);
  for (const { name } of gone) out.push({ what: 'column removed', sheet, column: name });
  for (const { name } of come) out.push({ what: 'column added', sheet, column: name });
  if (reordered) out.push({ what: 'columns reordered', sheet });
  for (const [x, y] of kept) {
    const fields = changed(x, y);
    if (fields.length) out.push({ what: 'column changed', sheet, column: y.name, fields });
  }
  const shared = kept.map(([, column]) => column);
  const rows = alignSheets(a, b, shared);
  compareRows(a, b, rows, out);
  let count = 0;
  for (const column of shared) {
    const [x, y] = [a.cells.get(column.id)!, b.cells.get(column.id)!];
    for (let row = 0; row < b.rows; row++) {
      const from = rows.before[row]!;
      if (from < 0) continue;
      if (sameCell(x, from, y, row)) continue;
      if (count++ < most)
        out.push({
          what: 'cell',
          sheet,
          column: column.name,
          row,
          before: cellOf(x, from),
          after: cellOf(y, row),
        });
    }
  }
  return count;
}

function compareRows(a: Sheet, b: Sheet, { before, reordered }: Alignment, out: Difference[]): void {
  if (reordered) out.push({ what: 'rows reordered', sheet: b.name });
  const stays = new Uint8Array(a.rows);
  for (const row of before) if (row >= 0) stays[row] = 1;
  for (const [row, count] of runs(a.rows, (i) => stays[i] === 0))
    out.push({ what: 'rows removed', sheet: b.name, row, count });
  for (const [row, count] of runs(b.rows, (i) => before[i] === -1))
    out.push({ what: 'rows added', sheet: b.name, row, count });
}

/** Unbroken runs of places for which something holds: where each begins, how long it is. */
function runs(length: number, holds: (i: number) => boolean): [number, number][] {
  const out: [number, number][] = [];
  for (let i = 0; i < length; i++) {
    if (!holds(i)) continue;
    const last = out.at(-1);
    if (last && last[0] + last[1] === i) last[1]++;
    else out.push([i, 1]);
  }
  return out;
}

function sameCell(x: CellBlock, i: number, y: CellBlock, j: number): boolean {
  const kind = x.kinds[i];
  if (kind !== y.kinds[j] || x.numbers[i] !== y.numbers[j]) return false;
  if (kind === CellKind.text) return x.texts?.[i] === y.texts?.[j];
  if (kind === CellKind.formula) return x.formulas.get(i) === y.formulas.get(j);
  if (kind !== CellKind.held) return true;
  const [p, q] = [x.held.get(i), y.held.get(j)];
  return p?.held === q?.held && p?.reason === q?.reason;
}

/** Which rows belong together. Rows that are the same from the top and from the bottom need no keys. */
function alignSheets(a: Sheet, b: Sheet, shared: readonly Column[]): Alignment {
  const cells = shared.map(({ id }) => [a.cells.get(id)!, b.cells.get(id)!] as const);
  const same = (i: number, j: number): boolean => cells.every(([x, y]) => sameCell(x, i, y, j));
  const shorter = Math.min(a.rows, b.rows);
  let top = 0;
  while (top < shorter && same(top, top)) top++;
  let bottom = 0;
  while (bottom < shorter - top && same(a.rows - 1 - bottom, b.rows - 1 - bottom)) bottom++;
  const [x, y] = ([0, 1] as const).map((side) =>
    rowKeys(
      cells.map((pair) => pair[side]),
      top,
      (side === 0 ? a.rows : b.rows) - bottom,
    ),
  );
  const middle = alignRows(x!, y!);
  const before = Int32Array.from({ length: b.rows }, (_, row) => {
    if (row < top) return row;
    if (row >= b.rows - bottom) return row - b.rows + a.rows;
    const from = middle.before[row - top]!;
    return from < 0 ? -1 : from + top;
  });
  return { before, reordered: middle.reordered };
}

/** For each row in [from, to) a text that two rows share exactly when all their cells are equal. */
const rowKeys = (cells: readonly CellBlock[], from: number, to: number): string[] =>
  Array.from({ length: to - from }, (_, i) =>
    cells.map((of) => JSON.stringify(cellOf(of, from + i))).join(' '),
  );

interface Matched<T> {
  readonly gone: readonly T[];
  readonly come: readonly T[];
  readonly kept: readonly (readonly [T, T])[];
  readonly reordered: boolean;
}

function match<T extends { readonly id: string }>(earlier: readonly T[], later: readonly T[]): Matched<T> {
  const before = new Map(earlier.map((item, i) => [item.id, { item, i }]));
  const ids = new Set(later.map(({ id }) => id));
  const kept = later.flatMap((item) => {
    const was = before.get(item.id);
    return was ? [[was.item, item] as const] : [];
  });
  const order = kept.map(([, { id }]) => before.get(id)!.i);
  return {
    gone: earlier.filter(({ id }) => !ids.has(id)),
    come: later.filter(({ id }) => !before.has(id)),
    kept,
    reordered: order.some((place, i) => i > 0 && place < order[i - 1]!),
  };
}

const pick = ({ name, label, purpose, note }: Sheet) => ({ name, label, purpose, note });

function changed(before: object, after: object): FieldChange[] {
  const a = new Map<string, unknown>(Object.entries(before));
  const b = new Map<string, unknown>(Object.entries(after));
  return [...new Set([...a.keys(), ...b.keys()])]
    .filter((field) => canonical(a.get(field)) !== canonical(b.get(field)))
    .map((field) => ({ field, before: a.get(field), after: b.get(field) }));
}

/** A text that two records share when they are equal, whatever the order of their keys. */
const canonical = (record: unknown): string =>
  JSON.stringify(record, (_, value: unknown) =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
      : value,
  );

function compareNames(earlier: Book, later: Book, out: Difference[]): void {
  const shown = (book: Book, key: string): string => book.names.get(key)!.name;
  keyed(earlier.names, later.names, (is, key) =>
    out.push({ what: `name ${is}`, name: shown(is === 'removed' ? earlier : later, key) }),
  );
}

function keyed(
  earlier: ReadonlyMap<string, unknown>,
  later: ReadonlyMap<string, unknown>,
  tell: (is: 'added' | 'removed' | 'changed', key: string) => void,
): void {
  for (const key of earlier.keys()) if (!later.has(key)) tell('removed', key);
  for (const [key, value] of later) {
    if (!earlier.has(key)) tell('added', key);
    else if (canonical(earlier.get(key)) !== canonical(value)) tell('changed', key);
  }
}
