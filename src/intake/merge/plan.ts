/** Plans how the rows of a file join those of a sheet: added, updated or left. */
import { type Cell, type CellBlock, CellKind, Cells } from '../../book/cells.ts';
import type { Edit } from '../../book/edit.ts';
import type { Column, Sheet } from '../../book/model.ts';
import type { HeldRow, Progress } from '../api.ts';
import { listed } from '../listed.ts';
import { IntakeRefusal, type Note, note } from '../sentences/index.ts';
import { type Differing, differencesInWords, differing, type OfDiffering } from './differing.ts';
import type { Filled } from './filled.ts';
import { cellAt, cellKey, pick, rowHashes, sameCell, sameRow } from './rows-of-sheet.ts';

export interface CellChange {
  readonly row: number;
  readonly column: string;
  readonly before: Cell;
  readonly after: Cell;
}

export interface Plan {
  readonly edits: readonly Edit[];
  readonly added: number;
  readonly updated: number;
  readonly unchanged: number;
  /** Rows that the sheet has with other values, and keeps. */
  readonly left: number;
  /** Cells that could not be read and were not entered: the sheet kept what it has. */
  readonly heldAside: number;
  /** How the rows came in: where the file's values are taken into rows that differ, appending becomes an update. */
  readonly mode: Mode;
  readonly key: readonly string[];
  /** Rows that would be added though the sheet has them with other values. */
  readonly differing: Differing | null;
  /** Rows that could not be placed after all (no key, key twice). */
  readonly held: readonly HeldRow[];
  /** What an update changes, the first of them. */
  readonly changes: readonly CellChange[];
}

export type Mode = 'append' | 'replace' | 'update';

export interface PlanInput {
  readonly sheet: Sheet;
  /** Columns that the sheet does not have yet, in order. */
  readonly newColumns: readonly Column[];
  readonly filled: readonly Filled[];
  readonly rows: number;
  readonly mode: Mode;
  /** Names of columns. */
  readonly key: readonly string[];
  /** What becomes of rows that the sheet has with other values; while it is asked, the sheet keeps its own. */
  readonly ofDiffering: OfDiffering | null;
  /** The sheet is known to list people, each once. */
  readonly roster: boolean;
  readonly lineOf: (row: number) => number;
  /** Rows as they stand in the file, by line. */
  readonly rawOf: (lines: ReadonlySet<number>) => ReadonlyMap<number, string>;
}

const MOST_CHANGES = 500;
/** Rows between two moments at which the work can be cancelled. */
const STEP = 20_000;

/** The edits that bring the rows into the sheet. */
export function* planning(input: PlanInput): Generator<Progress, Plan> {
  const { sheet, mode } = input;
  const before: Edit[] = input.newColumns.map((column, i) => ({
    do: 'add-column',
    sheet: sheet.id,
    index: sheet.columns.length + i,
    column,
  }));
  if (mode === 'replace') {
    const clear: Edit[] =
      sheet.rows > 0 ? [{ do: 'remove-rows', sheet: sheet.id, row: 0, count: sheet.rows }] : [];
    return {
      ...nothing(input),
      edits: [...before, ...clear, ...addRows(input, 0, null)],
      added: input.rows,
    };
  }
  if (mode === 'append' || (input.sheet.rows === 0 && input.key.length === 0)) {
    const plan = sheet.rows === 0 ? allRows(input) : yield* appendRows(input);
    return { ...plan, edits: [...before, ...plan.edits] };
  }
  const plan = yield* updateRows(input);
  return { ...plan, edits: [...before, ...plan.edits] };
}

const nothing = ({ mode, key }: Pick<PlanInput, 'mode' | 'key'>): Plan => ({
  edits: [],
  added: 0,
  updated: 0,
  unchanged: 0,
  left: 0,
  heldAside: 0,
  mode,
  key,
  differing: null,
  held: [],
  changes: [],
});

const allRows = (input: PlanInput): Plan => ({
  ...nothing(input),
  edits: addRows(input, 0, null),
  added: input.rows,
});

/** Rows that do not stand in the sheet are added; for those that stand there with other values, as was decided. */
function* appendRows(input: PlanInput): Generator<Progress, Plan> {
  const { sheet, rows, ofDiffering: decided, lineOf } = input;
  const there = standing(input);
  const coming = input.filled.map((f) => f.cells);
  const fresh = yield* unseenRows(input, there, coming);
  const unchanged = rows - fresh.length;
  const found = yield* differing({ ...input, fresh, repeated: unchanged / rows }, there, coming);
  const add = (some: readonly number[]): Plan => ({
    ...nothing(input),
    edits: addRows(input, sheet.rows, some),
    added: some.length,
    unchanged,
  });
  if (!found) return add(fresh);
  const { rows: differ, renamed, ...about } = found;
  const said = { differing: { ...about, decided } };
  if (decided === 'take')
    return { ...(yield* updateRows({ ...input, mode: 'update', key: found.key }, renamed)), ...said };
  if (decided === 'add') return { ...add(fresh), ...said };
  const differs = new Set(differ);
  const plan = { ...add(fresh.filter((row) => !differs.has(row))), ...said };
  if (decided !== 'hold') return { ...plan, left: differ.length, heldAside: heldIn(coming, differ) };
  const what = new Map(found.first.map((one) => [one.line, differencesInWords({ first: [one], count: 1 })]));
  const out = differ.map((row) => ({
    line: lineOf(row),
    reason: note('row-differs', { what: what.get(lineOf(row)) ?? '' }),
  }));
  return { ...plan, held: withRaw(out, input) };
}

/** One edit that adds rows; `rows` chooses some, null takes all. */
function addRows(input: PlanInput, at: number, rows: readonly number[] | null): Edit[] {
  const count = rows ? rows.length : input.rows;
  if (count === 0) return [];
  const byId = new Map(input.filled.map(({ column, cells }) => [column.id, cells]));
  const cells = [...input.sheet.columns, ...input.newColumns].map(({ id }) => {
    const block = byId.get(id);
    return block ? (rows ? pick(block, rows) : block) : [];
  });
  return [{ do: 'add-rows', sheet: input.sheet.id, row: at, count, cells }];
}

/** Cells of the sheet as they stand; a column that is still to be made is blank. */
function standing(input: PlanInput): CellBlock[] {
  return input.filled.map(({ column }) => input.sheet.cells.get(column.id) ?? new Cells(input.sheet.rows));
}

/** Rows that do not stand in the sheet yet. A row that the file has twice and the sheet once is new once. */
function* unseenRows(
  input: PlanInput,
  there: readonly CellBlock[],
  coming: readonly CellBlock[],
): Generator<Progress, number[]> {
  const total = input.sheet.rows + input.rows;
  const byHash = new Map<number, number[]>();
  const old = yield* rowHashes(there, input.sheet.rows);
  // From the last to the first, so that the first of equal rows is at the end of its list and is taken off without moving any.
  for (let row = old.length - 1; row >= 0; row--) {
    const rows = byHash.get(old[row]!);
    if (rows) rows.push(row);
    else byHash.set(old[row]!, [row]);
    if (row % STEP === 0) yield { done: old.length - row, total, about: 'comparing rows' };
  }
  const fresh: number[] = [];
  const hashes = yield* rowHashes(coming, input.rows);
  for (let row = 0; row < hashes.length; row++) {
    if (!takeSame(byHash.get(hashes[row]!), (other) => sameRow(coming, row, there, other))) fresh.push(row);
    if (row % STEP === 0) yield { done: old.length + row, total, about: 'comparing rows' };
  }
  return fresh;
}

/** Takes a row that is the same out of the list; false when there is none. */
function takeSame(rows: number[] | undefined, same: (row: number) => boolean): boolean {
  if (!rows) return false;
  for (let at = rows.length - 1; at >= 0; at--)
    if (same(rows[at]!)) {
      rows.splice(at, 1);
      return true;
    }
  return false;
}

/** Rows are recognised by key: known ones get the file's filled cells, others are added. */
function* updateRows(
  input: PlanInput,
  renamed: ReadonlyMap<number, number> = new Map(),
): Generator<Progress, Plan> {
  const { sheet, filled } = input;
  const keys = input.key.map((name) => {
    const at = filled.findIndex(({ column }) => column.name.toLowerCase() === name.toLowerCase());
    if (at < 0) throw noKey(input, name);
    return at;
  });
  if (keys.length === 0) throw noKey(input, '');
  const there = standing(input);
  const keyOf = (blocks: readonly CellBlock[], row: number): string =>
    keys.map((k) => cellKey(blocks[k]!, row)).join('\u0000');
  const rowOf = new Map<string, number>();
  for (let row = 0; row < sheet.rows; row++) {
    if (row % STEP === 0) yield { done: row, total: sheet.rows, about: 'comparing rows' };
    const key = keyOf(there, row);
    if (!rowOf.has(key)) rowOf.set(key, row);
  }
  const coming = filled.map((f) => f.cells);
  const fresh: number[] = [];
  const out: { line: number; reason: Note }[] = [];
  const changes: CellChange[] = [];
  const writes = new Map<number, number>();
  const seen = new Set<string>();
  let unchanged = 0;
  let heldAside = 0;
  for (let row = 0; row < input.rows; row++) {
    if (row % STEP === 0) yield { done: row, total: input.rows, about: 'comparing rows' };
    const key = keyOf(coming, row);
    if (keys.some((k) => coming[k]!.kinds[row] === CellKind.blank)) {
      out.push({ line: input.lineOf(row), reason: note('key-missing', { key: input.key.join(' + ') }) });
      continue;
    }
    if (seen.has(key)) {
      const value = key.replaceAll('\u0000', ' + ');
      out.push({ line: input.lineOf(row), reason: note('key-twice', { key: input.key.join(' + '), value }) });
      continue;
    }
    seen.add(key);
    const target = renamed.get(row) ?? rowOf.get(key);
    if (target === undefined) fresh.push(row);
    else if (differs(coming, row, there, target)) writes.set(target, row);
    else {
      unchanged++;
      heldAside += coming.filter((block, k) => isUnread(block, row, there[k]!, target)).length;
    }
  }
  const edits = filled.flatMap(({ column, cells }, k): Edit[] => {
    // One edit a run of neighbouring rows: a blank of the file leaves what stands there.
    const runs: { row: number; cells: Cell[] }[] = [];
    for (const [target, row] of [...writes].sort((a, b) => a[0] - b[0])) {
      if (isUnread(cells, row, there[k]!, target)) heldAside++;
      if (!replaces(cells, row, there[k]!, target)) continue;
      const after = cellAt(cells, row);
      if (changes.length < MOST_CHANGES)
        changes.push({ row: target, column: column.name, before: cellAt(there[k]!, target), after });
      const last = runs.at(-1);
      if (last && last.row + last.cells.length === target) last.cells.push(after);
      else runs.push({ row: target, cells: [after] });
    }
    return runs.map((run) => ({
      do: 'put-cells',
      sheet: sheet.id,
      row: run.row,
      columns: [column.id],
      cells: [run.cells],
    }));
  });
  return {
    ...nothing(input),
    edits: [...edits, ...addRows(input, sheet.rows, fresh)],
    added: fresh.length,
    updated: writes.size,
    unchanged,
    heldAside,
    held: withRaw(out, input),
    changes,
  };
}

function withRaw(out: readonly { line: number; reason: Note }[], input: PlanInput): HeldRow[] {
  if (out.length === 0) return [];
  const raw = input.rawOf(new Set(out.map((o) => o.line)));
  return out.map((o) => ({ ...o, raw: raw.get(o.line) ?? '' }));
}

const differs = (
  coming: readonly CellBlock[],
  row: number,
  there: readonly CellBlock[],
  target: number,
): boolean => coming.some((block, k) => replaces(block, row, there[k]!, target));

/** A cell of the file replaces what stands there, unless it is blank, the same, or cannot be read. */
const replaces = (cells: CellBlock, row: number, there: CellBlock, target: number): boolean =>
  cells.kinds[row] !== CellKind.blank &&
  !sameCell(cells, row, there, target) &&
  !isUnread(cells, row, there, target);

const isUnread = (cells: CellBlock, row: number, there: CellBlock, target: number): boolean =>
  cells.kinds[row] === CellKind.held &&
  there.kinds[target] !== CellKind.blank &&
  there.kinds[target] !== CellKind.held;

const heldIn = (blocks: readonly CellBlock[], rows: readonly number[]): number =>
  blocks.reduce((n, { kinds }) => n + rows.filter((row) => kinds[row] === CellKind.held).length, 0);

function noKey(input: PlanInput, key: string): IntakeRefusal {
  return new IntakeRefusal('no-key', { key, columns: listed(input.filled.map((f) => f.column.name)) });
}
