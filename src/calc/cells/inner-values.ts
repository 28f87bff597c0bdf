/** Values and arrays from the book's form to that of the cell engine, and back. */
import { type CellError, EmptyValue, SimpleRangeValue } from 'hyperformula';
import { isIssue, issue } from '../../../functions/core/issue.ts';
import {
  type Argument,
  isMatrix,
  Kind,
  type Matrix,
  type Outcome,
  type Range,
  rangeOf,
  type Value,
} from '../../../functions/core/value.ts';
import { cellEngine, isError } from '../cell-engine/engine.ts';
import { errorOf, type Inner, isRich, issueOfError } from '../cell-engine/values.ts';
import { limits } from '../limits.ts';
import type { Spot } from './place.ts';

const innerOfValue = (value: Value): Inner =>
  value === null ? EmptyValue : isIssue(value) ? errorOf(value) : value;

/** What a cell holds, as the cell engine sees it. */
export const innerOf = ({ kind, value }: Spot): Inner =>
  kind === Kind.date ? cellEngine().rich(value as number, 'date') : innerOfValue(value);

function innerAt(range: Range, i: number): Inner {
  switch (range.kinds[i]) {
    case Kind.number:
      return range.numbers[i]!;
    case Kind.date:
      return cellEngine().rich(range.numbers[i]!, 'date');
    case Kind.text:
      return range.texts?.[i] ?? '';
    case Kind.yesNo:
      return range.numbers[i] !== 0;
    case Kind.error:
      return errorOf(range.errors![i]!);
    default:
      return EmptyValue;
  }
}

/** The same array once more, safe from what the engine does to the first. */
export const copied = (value: Inner | SimpleRangeValue): Inner | SimpleRangeValue =>
  value instanceof SimpleRangeValue ? engineArray(value.data.map((row) => [...row])) : value;

/** An array of the cell engine. */
const engineArray = (data: Inner[][]): SimpleRangeValue => SimpleRangeValue.onlyValues(data);

/**
 * Rows [from, to) of columns side by side as one range of the cell engine; rows beyond the sheet are blank. Made anew
 * each time: the engine's operators write their results into an array that has no address.
 */
export function rangeInside(
  columns: readonly Range[],
  from = 0,
  to = Math.max(1, columns[0]!.rows),
): SimpleRangeValue | CellError {
  const [first] = columns;
  if ((to - from) * columns.length > limits.handedCells)
    return errorOf(issue('#VALUE!', 'range-too-large', { details: { most: limits.handedCells } }));
  const blank = columns.map((): Inner => EmptyValue);
  const data: Inner[][] = [];
  for (let row = from; row < to; row++)
    data.push(row < first!.rows ? columns.map((column) => innerAt(column, row)) : [...blank]);
  return engineArray(data);
}

/** A value of the cell engine as the functions take it. */
export function valueFrom(value: Inner): Value {
  if (value === EmptyValue) return null;
  if (isError(value)) return issueOfError(value);
  return isRich(value) ? value.val : (value as number | string | boolean);
}

export const isDate = (value: Inner): boolean =>
  isRich(value) && ['date', 'date-time'].includes(cellEngine().sortOf(value));

/** A result of more than one cell, with its dates marked. */
export function rangeOfResult(result: SimpleRangeValue): Range {
  const rows = result.data;
  const flat = rows.flat() as Inner[];
  const range = rangeOf(rows.length, rows[0]?.length ?? 0, flat.map(valueFrom));
  for (let i = 0; i < flat.length; i++) if (isDate(flat[i]!)) range.kinds[i] = Kind.date;
  return range;
}

export const argumentOf = (value: Inner | SimpleRangeValue): Argument =>
  value instanceof SimpleRangeValue ? rangeOfResult(value) : valueFrom(value);

/** What a function of ours answers, for the cell engine. */
export function innerOfOutcome(outcome: Outcome | Value | Matrix): Inner | SimpleRangeValue {
  if (!isMatrix(outcome)) return innerOfValue(outcome as Value);
  const data: Inner[][] = [];
  for (let row = 0; row < outcome.rows; row++)
    data.push(outcome.values.slice(row * outcome.columns, (row + 1) * outcome.columns).map(innerOfValue));
  return engineArray(data);
}
