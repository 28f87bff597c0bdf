/** Nodes of a plan that read columns, cells and ranges. */
import { type Range, valueAt } from '../../../functions/core/value.ts';
import {
  type Area,
  type AreaNode,
  BLOCK,
  type Frame,
  fixedScalar,
  rowAt,
  type ScalarNode,
} from './plan-nodes.ts';
import { Tag, Vector } from './vector.ts';

const plainColumns = new WeakMap<Range, boolean>();
/** True when every cell of a range is a number. */
function isPlain(range: Range): boolean {
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
function viewOf(view: Vector, range: Range, from: number, count: number): Vector {
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
  const view = new Vector(0);
  const own = new Vector(BLOCK);
  return {
    is: 'scalar',
    varies: true,
    written: 'reference',
    vector(frame) {
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
  const vector = new Vector(0);
  vector.tags = range.kinds.length === range.rows * range.columns ? range.kinds : NONE;
  if (vector.tags === NONE && range.rows * range.columns > 0)
    vector.tags = range.kinds.subarray(0, range.rows * range.columns);
  vector.numbers = range.rows * range.columns > 0 ? range.numbers : NO_NUMBERS;
  vector.texts = range.texts;
  vector.errors = range.errors;
  vector.plain = isPlain(range);
  return { rows: range.rows, columns: range.columns, vector, range };
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
function rectangle(columns: readonly Range[], from: number, to: number): Range {
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
      area(frame, index) {
        const row = rowAt(frame, index);
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
