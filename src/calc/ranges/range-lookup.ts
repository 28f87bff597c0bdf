/** XLOOKUP, VLOOKUP, MATCH and their kin over columns with an index. */
import { CellError, EmptyValue, ErrorType } from 'hyperformula';
import { type Matrix, type Range, type Value, valueAt } from '../../../functions/core/value.ts';
import type { Inner } from '../cell-engine/values.ts';
import { patternOf } from '../wildcards.ts';
import { findEqual, findMatching, findNearest, findSorted } from './find.ts';

const problem = (type: ErrorType, message: string): CellError => new CellError(type, message);
const badMode = problem(ErrorType.VALUE, 'Mode not recognized.');
const notFound = problem(ErrorType.NA, 'Value not found.');
const wrongShape = problem(ErrorType.VALUE, 'Wrong range dimension.');
const notOneLine = problem(ErrorType.NA, '');
const belowOne = problem(ErrorType.VALUE, 'Argument cannot be less than 1.');
const beyond = problem(ErrorType.REF, 'Index too large.');
const tooLarge = problem(ErrorType.NUM, 'Value too large.');
const noCell = problem(ErrorType.VALUE, 'Cell range expected.');

/** A cell that a function answers with: its place, so that dates stay dates. */
export interface CellOf {
  readonly range: Range;
  readonly at: number;
}
export const isCellOf = (value: unknown): value is CellOf =>
  typeof value === 'object' && value !== null && 'at' in value && 'range' in value;

const blankAsZero = (key: Inner): Inner => (key === EmptyValue ? 0 : key);
/** A cell that is found; a blank one stays blank. */
const cell = (range: Range, at: number): CellOf => ({ range, at });

function lineOf(range: Range, columns: number, from: number, step: number, count: number): Range {
  const kinds = new Uint8Array(count);
  const numbers = new Float64Array(count);
  const texts: (string | undefined)[] = [];
  const errors: NonNullable<Range['errors']>[number][] = [];
  for (let k = 0; k < count; k++) {
    const i = from + k * step;
    kinds[k] = range.kinds[i]!;
    numbers[k] = range.numbers[i]!;
    texts[k] = range.texts?.[i];
    errors[k] = range.errors?.[i];
  }
  return {
    rows: columns === 1 ? count : 1,
    columns: columns === 1 ? 1 : count,
    kinds,
    numbers,
    texts,
    errors,
  };
}

const lines = new WeakMap<Range, { readonly column: Range; readonly row: Range }>();
/** First column and first row of a range. */
function edgesOf(range: Range): { readonly column: Range; readonly row: Range } {
  let edges = lines.get(range);
  if (!edges) {
    edges = {
      column: range.columns === 1 ? range : lineOf(range, 1, 0, range.columns, range.rows),
      row: range.rows === 1 ? range : lineOf(range, range.columns, 0, 1, range.columns),
    };
    lines.set(range, edges);
  }
  return edges;
}

/** The lookup functions on arguments that are coerced already. */
export const lookups = {
  match(key: Inner, range: Range, type: number): number | CellError {
    if (type !== -1 && type !== 0 && type !== 1) return badMode;
    if (range.columns > 1 && range.rows > 1) return notOneLine;
    const sought = blankAsZero(key);
    const at =
      type === 0
        ? findMatching(sought, range)
        : findSorted(sought, range, type === 1 ? 'up' : 'down', type === 1 ? 'lower' : 'upper');
    return at < 0 ? notFound : at + 1;
  },
  vlookup(key: Inner, range: Range, index: number, sorted: boolean): CellOf | CellError {
    if (index < 1) return belowOne;
    if (index > range.columns) return beyond;
    const { column } = edgesOf(range);
    const sought = blankAsZero(key);
    const row = sorted ? findSorted(sought, column, 'up', 'lower') : findMatching(sought, column);
    return row < 0 ? notFound : cell(range, row * range.columns + Math.trunc(index) - 1);
  },
  hlookup(key: Inner, range: Range, index: number, sorted: boolean): CellOf | CellError {
    if (index < 1) return belowOne;
    if (index > range.rows) return beyond;
    const { row } = edgesOf(range);
    const sought = blankAsZero(key);
    const column = sorted ? findSorted(sought, row, 'up', 'lower') : findMatching(sought, row);
    return column < 0 ? notFound : cell(range, (Math.trunc(index) - 1) * range.columns + column);
  },
  xlookup(
    key: Inner,
    lookup: Range,
    answers: Range,
    otherwise: Inner,
    match: number,
    search: number,
  ): CellOf | Inner | Matrix {
    if (match !== 0 && match !== -1 && match !== 1 && match !== 2) return badMode;
    if (search !== 1 && search !== -1 && search !== 2 && search !== -2) return badMode;
    const down = lookup.columns === 1 && answers.rows === lookup.rows;
    const across = lookup.rows === 1 && answers.columns === lookup.columns;
    if (!down && !across) return wrongShape;
    const sought = blankAsZero(key);
    const from = search === -1 ? 'last' : 'first';
    const ifNone = match === -1 ? 'lower' : match === 1 ? 'upper' : 'none';
    let at: number;
    if (match === 2 && typeof sought === 'string' && patternOf(sought))
      at = findMatching(sought, lookup, from);
    else if (Math.abs(search) === 2) at = findSorted(sought, lookup, search === 2 ? 'up' : 'down', ifNone);
    else at = ifNone === 'none' ? findEqual(sought, lookup, from) : findNearest(sought, lookup, ifNone, from);
    if (at < 0) return otherwise === ErrorType.NA ? notFound : otherwise;
    const count = down ? answers.columns : answers.rows;
    if (count === 1) return cell(answers, at);
    const values: Value[] = [];
    for (let k = 0; k < count; k++) {
      const i = down ? at * count + k : k * answers.columns + at;
      values.push(valueAt(answers, i));
    }
    return { rows: down ? 1 : count, columns: down ? count : 1, values };
  },
  index(range: Range, row: number, column: number): CellOf | CellError {
    if (column < 1 || row < 1) return belowOne;
    if (column > range.columns || row > range.rows) return tooLarge;
    const whole = Number.isInteger(row) && Number.isInteger(column);
    if (range.rows * range.columns === 0) return noCell;
    return { range, at: whole ? (row - 1) * range.columns + column - 1 : 0 };
  },
} as const;
