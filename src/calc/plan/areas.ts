import { type CellError, EmptyValue, SimpleRangeValue } from 'hyperformula';
import { type Issue, issue } from '../../../functions/core/issue.ts';
import { isMatrix, Kind, type Outcome, type Range } from '../../../functions/core/value.ts';
import { errorOf, type Inner } from '../cell-engine/values.ts';
import { limits } from '../limits.ts';
import type { Area } from './plan-nodes.ts';
import { Tag, Vector } from './vector.ts';

/** An area of what a function answered: its array, or one cell with its value. */
export function areaOfMatrix(outcome: Outcome | null): Area {
  const { rows, columns, values } = isMatrix(outcome) ? outcome : { rows: 1, columns: 1, values: [outcome] };
  const vector = new Vector(rows * columns);
  vector.mixed();
  for (let i = 0; i < rows * columns; i++) vector.setValue(i, values[i]);
  return { rows, columns, vector, range: null };
}

const ranges = new WeakMap<Area, Range>();

/** An area as functions of the domain take it; the column itself where there is one. */
export function rangeOfArea(area: Area): Range {
  if (area.range) return area.range;
  let range = ranges.get(area);
  if (!range) {
    const size = area.rows * area.columns;
    const { vector } = area;
    if (isAsInRange(vector, size)) {
      range = { rows: area.rows, columns: area.columns, ...shares(vector, size), texts: null, errors: null };
      ranges.set(area, range);
      return range;
    }
    const kinds = new Uint8Array(size);
    const numbers = new Float64Array(size);
    let texts: (string | undefined)[] | null = null;
    let errors: (Issue | undefined)[] | null = null;
    for (let i = 0; i < size; i++) {
      const tag = vector.tags[i]!;
      kinds[i] = kindOfTag(tag);
      numbers[i] = vector.numbers[i]!;
      if (tag === Tag.text) {
        texts ??= new Array(size);
        texts[i] = vector.textAt(i);
      } else if (tag === Tag.error) {
        errors ??= new Array(size);
        errors[i] = vector.errorAt(i);
      }
    }
    range = { rows: area.rows, columns: area.columns, kinds, numbers, texts, errors };
    ranges.set(area, range);
  }
  return range;
}

/** Neither texts nor errors are among the elements, and each tag is what a range has for it. */
function isAsInRange(vector: Vector, size: number): boolean {
  if (vector.plain || vector.decided) return true;
  for (let i = 0; i < size; i++) {
    const tag = vector.tags[i]!;
    if (tag > Tag.yesNo || tag === Tag.text) return false;
  }
  return true;
}

const shares = ({ tags, numbers }: Vector, size: number) => ({
  kinds: tags.subarray(0, size),
  numbers: numbers.subarray(0, size),
});

/** What a cell of a column holds for a tag: dates with a time of day are dates, all other numbers numbers. */
export function kindOfTag(tag: number): number {
  if (tag <= Tag.error) return tag;
  return tag === Tag.dateTime ? Kind.date : Kind.number;
}

/**
 * An area as the cell engine takes it; a column without rows is a blank, as for free formulas. A new object each time: the
 * engine writes into arrays it is handed.
 */
export function engineRange(area: Area): SimpleRangeValue | CellError {
  const { rows, columns, vector } = area;
  if (rows * columns > limits.handedCells)
    return errorOf(
      issue('#VALUE!', 'too-many-cells', {
        received: rows * columns,
        details: { most: limits.handedCells },
      }),
    );
  const data: Inner[][] = [];
  for (let r = 0; r < rows; r++) {
    const line: Inner[] = [];
    for (let c = 0; c < columns; c++) line.push(vector.innerAt(r * columns + c));
    data.push(line);
  }
  if (rows === 0) data.push(Array.from({ length: columns }, (): Inner => EmptyValue));
  return SimpleRangeValue.onlyValues(data);
}

/** An array that the cell engine answered. */
export function areaOfEngineRange(range: SimpleRangeValue, name?: string): Area {
  const rows = range.height();
  const columns = range.width();
  const vector = new Vector(rows * columns);
  vector.mixed();
  const data = range.data as unknown as (Inner | undefined)[][];
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++) vector.setInner(r * columns + c, data[r]?.[c], name);
  return { rows, columns, vector, range: null };
}
