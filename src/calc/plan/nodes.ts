import { type Range, type Value, valueAt } from '../../../functions/core/value.ts';
import type { Source } from './api.ts';
import { gather, Lanes, noMatch, singleLane, Tag } from './lanes.ts';
import type { Kernel } from './operators.ts';

/** Rows computed at a time: small enough that all intermediate values of a formula stay in the processor's cache. */
export const BLOCK = 1024;

/** One run of a plan. What does not depend on the row is computed once a run. */
export interface Run {
  readonly source: Source;
  readonly id: number;
}

/**
 * Rows that are computed together: `count` rows from `start` on, or the `rows` listed. A frame inside another (the rows
 * that take one branch of an IF) knows which lanes of it they are.
 */
export interface Frame {
  readonly run: Run;
  /** Differs from every other frame of the run. */
  readonly id: number;
  readonly start: number;
  readonly rows: Int32Array | null;
  readonly count: number;
  readonly outer: Frame | null;
  readonly outerLanes: Int32Array | null;
}

let ids = 0;
export const nextId = (): number => ++ids;

/** The frame for what does not depend on the row. */
export const frameOfRun = (run: Run): Frame => ({
  run,
  id: -run.id,
  start: 0,
  rows: null,
  count: 1,
  outer: null,
  outerLanes: null,
});

/** The frame of those rows of another that stand in `lanes`. */
export function innerFrame(frame: Frame, lanes: Int32Array, count: number): Frame {
  const rows = new Int32Array(count);
  for (let i = 0; i < count; i++) rows[i] = rowAt(frame, lanes[i]!);
  return { run: frame.run, id: nextId(), start: 0, rows, count, outer: frame, outerLanes: lanes };
}

export const rowAt = (frame: Frame, lane: number): number =>
  frame.rows ? frame.rows[lane]! : frame.start + lane;

/** Cells of a rectangle, row by row. `range` is the column or range behind it, where there is one. */
export interface Area {
  readonly rows: number;
  readonly columns: number;
  readonly lanes: Lanes;
  readonly range: Range | null;
}

/** How an argument is written; SUM and its kin treat a reference and a computed value differently. */
export type Written = 'reference' | 'empty' | 'value';

/** A piece of a formula that has one value in each row. */
export interface ScalarNode {
  readonly is: 'scalar';
  readonly varies: boolean;
  readonly written: Written;
  lanes(frame: Frame): Lanes;
}
/** A piece of a formula that is a rectangle of values; when it varies, another one in each row. */
export interface AreaNode {
  readonly is: 'area';
  readonly varies: boolean;
  /** `lane` is only looked at when it varies. */
  area(frame: Frame, lane: number): Area;
  /** A range as it stands in the sheet, not a computed array. */
  readonly written: Written;
  /** How many columns, where that is known beforehand. */
  readonly columns?: number;
}
export type PlanNode = ScalarNode | AreaNode;

/** A value written into the formula, or an error found while compiling. */
export function constantNode(value: Value, written: Written = 'value'): ScalarNode {
  const lanes = singleLane(value);
  return { is: 'scalar', varies: false, written, lanes: () => lanes };
}

/** Computes `make` once a run. */
export function oncePerRun<T>(make: (frame: Frame) => T): (frame: Frame) => T {
  let id = -1;
  let value: T;
  return (frame) => {
    if (id !== frame.run.id) {
      value = make(frameOfRun(frame.run));
      id = frame.run.id;
    }
    return value;
  };
}

/** A scalar that does not depend on the row. */
export function fixedScalar(make: (frame: Frame, out: Lanes) => void): ScalarNode {
  const lanes = oncePerRun((frame) => {
    const out = new Lanes(1);
    make(frame, out);
    out.single = true;
    out.plain = out.tags[0] === Tag.number;
    return out;
  });
  return { is: 'scalar', varies: false, written: 'value', lanes };
}

/** A scalar of each row that computes into lanes of its own. */
export function varyingScalar(fill: (frame: Frame, out: Lanes) => void): ScalarNode {
  const out = new Lanes(BLOCK);
  return {
    is: 'scalar',
    varies: true,
    written: 'value',
    lanes(frame) {
      fill(frame, out);
      if (!out.plain) out.look(frame.count);
      return out;
    },
  };
}

const plainColumns = new WeakMap<Range, boolean>();
/** True when every cell of a range is a number. */
export function isPlain(range: Range): boolean {
  let plain = plainColumns.get(range);
  if (plain === undefined) {
    plain = allNumbers(range.kinds, 0, range.rows * range.columns);
    plainColumns.set(range, plain);
  }
  return plain;
}

const plainBlocks = new WeakMap<Range, Uint8Array>();
/** True when the cells [from, from + count) of a range are all numbers; remembered for whole blocks. */
function isPlainFrom(range: Range, from: number, count: number): boolean {
  if (plainColumns.get(range)) return true;
  const { kinds } = range;
  const block = from / BLOCK;
  if (!Number.isInteger(block)) return allNumbers(kinds, from, count);
  let known = plainBlocks.get(range);
  if (!known) {
    known = new Uint8Array(Math.ceil(range.rows / BLOCK));
    plainBlocks.set(range, known);
  }
  if (known[block] === 0) {
    const all = Math.min(BLOCK, range.rows * range.columns - from);
    known[block] = allNumbers(kinds, from, all) ? 2 : 1;
  }
  return known[block] === 2 || (count < BLOCK && allNumbers(kinds, from, count));
}

/** Four number tags side by side. */
const FOUR = Tag.number * 0x01010101;

function allNumbers(kinds: Uint8Array, from: number, count: number): boolean {
  const to = from + count;
  let i = from;
  // Four at a time: every version of a column is looked through once, and edits make versions.
  if (count > 64) {
    while ((kinds.byteOffset + i) % 4 !== 0) if (kinds[i++] !== Tag.number) return false;
    const words = new Uint32Array(kinds.buffer, kinds.byteOffset + i, (to - i) >> 2);
    for (let k = 0; k < words.length; k++) if (words[k] !== FOUR) return false;
    i += words.length * 4;
  }
  for (; i < to; i++) if (kinds[i] !== Tag.number) return false;
  return true;
}

const NONE = new Uint8Array(0);
const NO_NUMBERS = new Float64Array(0);

/** A view of consecutive cells of a range; no value is copied. */
function viewOf(view: Lanes, range: Range, from: number, count: number): Lanes {
  view.tags = range.kinds.subarray(from, from + count);
  view.numbers = range.numbers.subarray(from, from + count);
  view.texts = range.texts;
  view.errors = range.errors;
  view.base = from;
  view.plain = isPlainFrom(range, from, count);
  return view;
}

/** This row's value of a column, or that of the row `shift` further down; beyond the last row it is blank. */
export function columnNode(sheet: string, column: string, shift = 0): ScalarNode {
  const view = new Lanes(0);
  const own = new Lanes(BLOCK);
  return {
    is: 'scalar',
    varies: true,
    written: 'reference',
    lanes(frame) {
      const range = frame.run.source.column(sheet, column);
      const size = range.rows;
      const from = frame.start + shift;
      if (!frame.rows && from + frame.count <= size) return viewOf(view, range, from, frame.count);
      own.mixed();
      view.tags = range.kinds;
      view.numbers = range.numbers;
      view.texts = range.texts;
      view.errors = range.errors;
      view.base = 0;
      const plain = isPlain(range);
      let within = true;
      for (let i = 0; i < frame.count; i++) {
        const row = rowAt(frame, i) + shift;
        if (row >= size) {
          own.setBlank(i);
          within = false;
        } else if (plain) own.numbers[i] = range.numbers[row]!;
        else own.copy(i, view, row);
      }
      if (plain && within) own.allNumbers(frame.count);
      else if (plain)
        for (let i = 0; i < frame.count; i++) if (rowAt(frame, i) + shift < size) own.tags[i] = Tag.number;
      return own;
    },
  };
}

/** One cell that stays the same for every row. */
export function cellNode(sheet: string, column: string, row: number): ScalarNode {
  const node = fixedScalar((frame, out) => {
    const { source } = frame.run;
    const range = source.column(sheet, column);
    if (row < range.rows && range.kinds[row] === Tag.date) out.setNumber(0, range.numbers[row]!, Tag.date);
    else out.setValue(0, source.cell(sheet, column, row));
  });
  return { ...node, written: 'reference' };
}

export function areaOfRange(range: Range): Area {
  const lanes = new Lanes(0);
  lanes.tags = range.kinds.length === range.rows * range.columns ? range.kinds : NONE;
  if (lanes.tags === NONE && range.rows * range.columns > 0)
    lanes.tags = range.kinds.subarray(0, range.rows * range.columns);
  lanes.numbers = range.rows * range.columns > 0 ? range.numbers : NO_NUMBERS;
  lanes.texts = range.texts;
  lanes.errors = range.errors;
  lanes.plain = isPlain(range);
  return { rows: range.rows, columns: range.columns, lanes, range };
}

/** A whole column. */
export function wholeColumnNode(sheet: string, column: string): AreaNode {
  let last: Range | undefined;
  let area: Area | undefined;
  return {
    is: 'area',
    varies: false,
    written: 'reference',
    columns: 1,
    area(frame) {
      const range = frame.run.source.column(sheet, column);
      if (range !== last || !area) {
        last = range;
        area = areaOfRange(range);
      }
      return area;
    },
  };
}

/** Cells [from, to] of some columns side by side; rows beyond the sheet are blank. */
export function rectangle(columns: readonly Range[], from: number, to: number): Range {
  const rows = Math.max(0, to - from + 1);
  const size = rows * columns.length;
  const kinds = new Uint8Array(size);
  const numbers = new Float64Array(size);
  let texts: (string | undefined)[] | null = null;
  let errors: (Range['errors'] extends readonly (infer T)[] | null ? T : never)[] | null = null;
  columns.forEach((column, k) => {
    for (let r = 0; r < rows; r++) {
      const row = from + r;
      if (row < 0 || row >= column.rows) continue;
      const at = r * columns.length + k;
      const kind = column.kinds[row]!;
      kinds[at] = kind;
      if (kind === Tag.text) {
        texts ??= new Array(size);
        texts[at] = column.texts?.[row] ?? '';
      } else if (kind === Tag.error) {
        errors ??= new Array(size);
        const value = valueAt(column, row);
        if (typeof value === 'object' && value !== null) errors[at] = value;
      } else numbers[at] = column.numbers[row]!;
    }
  });
  return { rows, columns: columns.length, kinds, numbers, texts, errors };
}

/** A rectangle of cells; its ends may move along with the row. */
export function cellsNode(
  sheet: string,
  columns: readonly string[],
  from: number,
  to: number,
  fromMoves: boolean,
  toMoves: boolean,
): AreaNode {
  let last: readonly Range[] = [];
  let area: Area | undefined;
  const rangesOf = (frame: Frame): readonly Range[] =>
    columns.map((column) => frame.run.source.column(sheet, column));
  if (fromMoves || toMoves)
    return {
      is: 'area',
      varies: true,
      written: 'reference',
      columns: columns.length,
      area(frame, lane) {
        const row = rowAt(frame, lane);
        const a = fromMoves ? from + row : from;
        const b = toMoves ? to + row : to;
        return areaOfRange(rectangle(rangesOf(frame), Math.min(a, b), Math.max(a, b)));
      },
    };
  return {
    is: 'area',
    varies: false,
    written: 'reference',
    columns: columns.length,
    area(frame) {
      const ranges = rangesOf(frame);
      if (!area || ranges.some((range, k) => range !== last[k])) {
        last = ranges;
        area = areaOfRange(rectangle(ranges, from, to));
      }
      return area;
    },
  };
}

/** The value of a 1×1 rectangle stands for itself; a larger one has none. */
export function scalarOfArea(area: Area): Lanes | null {
  if (area.rows * area.columns !== 1) return null;
  const lanes = new Lanes(1);
  lanes.mixed();
  lanes.copy(0, area.lanes, 0);
  lanes.single = true;
  lanes.plain = lanes.tags[0] === Tag.number;
  return lanes;
}

/** Spreads an argument over the cells of the array that all make together; it may have no cell at some. */
function spread(lanes: Lanes, from: Area, rows: number, columns: number, none: number): Lanes {
  if (from.rows === rows && from.columns === columns) return lanes;
  const out = new Lanes(rows * columns);
  out.unchecked = lanes.unchecked;
  out.mixed();
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++) {
      const i = from.rows === 1 ? 0 : r;
      const j = from.columns === 1 ? 0 : c;
      if (i < from.rows && j < from.columns) out.copy(r * columns + c, lanes, i * from.columns + j);
      else if (none === Tag.error) out.setError(r * columns + c, noMatch);
      else out.tags[r * columns + c] = none;
    }
  return out;
}

/**
 * A function or operator that works on single values. With arrays among its arguments it works on each of their cells
 * and gives an array; where an array has no cell, operators give #N/A and functions take the argument as missing.
 */
export function elementwise(kernel: Kernel, args: readonly PlanNode[], none: number = Tag.error): PlanNode {
  const scalars = args.filter((arg) => arg.is === 'scalar');
  if (scalars.length === args.length) {
    if (args.every((arg) => !arg.varies))
      return fixedScalar((frame, out) =>
        kernel(
          scalars.map((arg) => arg.lanes(frame)),
          1,
          out,
        ),
      );
    const handed: Lanes[] = new Array(args.length);
    return varyingScalar((frame, out) => {
      for (let k = 0; k < scalars.length; k++) handed[k] = scalars[k]!.lanes(frame);
      kernel(handed, frame.count, out);
    });
  }
  const compute = (frame: Frame, lane: number): Area => {
    const areas = args.map((arg): Area => {
      if (arg.is === 'area') return arg.area(frame, lane);
      const lanes = arg.lanes(frame);
      if (lanes.single) return { rows: 1, columns: 1, lanes, range: null };
      const one = new Lanes(1);
      one.mixed();
      one.copy(0, lanes, lane);
      return { rows: 1, columns: 1, lanes: one, range: null };
    });
    // an operator with an error value beside the array is that error, not an array of it
    if (none === Tag.error)
      for (const area of areas)
        if (area.rows * area.columns === 1 && area.lanes.tags[0] === Tag.error) return area;
    const rows = Math.max(1, ...areas.map((area) => area.rows));
    const columns = Math.max(1, ...areas.map((area) => area.columns));
    const size = rows * columns;
    const handedAreas = areas.map((area) => {
      if (area.rows === 1 && area.columns === 1) return scalarOfArea(area)!;
      return spread(area.lanes, area, rows, columns, none);
    });
    const out = new Lanes(size);
    out.unchecked = size > 1;
    kernel(handedAreas, size, out);
    return { rows, columns, lanes: out, range: null };
  };
  if (args.some((arg) => arg.varies)) return { is: 'area', varies: true, written: 'value', area: compute };
  const once = oncePerRun((frame) => compute(frame, 0));
  return { is: 'area', varies: false, written: 'value', area: once };
}

/** Values of one name given by LET: computed once a frame; rows inside a branch take theirs from the frame around it. */
export function localNode(of: ScalarNode): ScalarNode {
  if (!of.varies) return { ...of, written: 'value' };
  const kept: { id: number; lanes: Lanes }[] = [];
  const lanesOf = (frame: Frame, depth: number): Lanes => {
    const known = kept[depth];
    if (known?.id === frame.id) return known.lanes;
    const lanes =
      frame.outer && frame.outerLanes
        ? gather(
            lanesOf(frame.outer, depth - 1),
            frame.outerLanes,
            frame.count,
            known?.lanes ?? new Lanes(BLOCK),
          )
        : of.lanes(frame);
    kept[depth] = { id: frame.id, lanes };
    return lanes;
  };
  return {
    is: 'scalar',
    varies: true,
    written: 'value',
    lanes(frame) {
      let depth = 0;
      for (let f = frame.outer; f; f = f.outer) depth++;
      return lanesOf(frame, depth);
    },
  };
}
