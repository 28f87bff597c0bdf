import { CellError, type FunctionArgument, type SimpleRangeValue } from 'hyperformula';
import type { Range } from '../../../functions/core/value.ts';
import type { FunctionBody } from '../cell-engine/engine.ts';
import { errorOf } from '../cell-engine/values.ts';
import { limits } from '../limits.ts';
import { engineRange, rangeOfArea } from './areas.ts';
import { found, readNumber, textOf, truthOf } from './coerce.ts';
import { type Area, type AreaNode, type Frame, type PlanNode, scalarOfArea } from './plan-nodes.ts';
import { wrongCount, wrongType } from './problems.ts';
import { isNumberTag, Tag, Vector } from './vector.ts';

/** A function of the cell engine, or one of ours over ranges that takes its parameters. */
export interface Callee extends Pick<FunctionBody, 'name' | 'metadata' | 'parameters' | 'coerce'> {
  readonly run: (...args: unknown[]) => unknown;
  /** Ranges are handed as typed arrays, not as the cell engine's own. */
  readonly typedRanges: boolean;
}

/** A parameter for each argument, repeated ones laid out; null for a wrong number of arguments. */
export function parametersOf(
  callee: Pick<FunctionBody, 'metadata' | 'parameters'>,
  count: number,
): readonly FunctionArgument[] | null {
  const all = [...callee.parameters];
  const repeat = callee.metadata.repeatLastArgs ?? 0;
  if (repeat > 0) while (count > all.length) all.push(...all.slice(all.length - repeat));
  if (count > all.length) return null;
  const missing = all.slice(count);
  return missing.every((p) => p.optionalArg || p.defaultValue !== undefined) ? all : null;
}

export const takesRange = (parameter: FunctionArgument | undefined): boolean =>
  parameter?.argumentType === 'RANGE' || parameter?.argumentType === 'ANY';

/** What `coerceAt` answers for a value of a wrong kind. */
export const wrong = Symbol('wrong kind');
export const wrongTypeError = errorOf(wrongType);
export const wrongCountError = errorOf(wrongCount);

export function defaultOf(callee: Callee, parameter: FunctionArgument): unknown {
  const value = parameter.defaultValue;
  return value === undefined ? undefined : callee.coerce(value as never, parameter);
}

/** True for an argument left out (`F(a,,b)`) where the function then takes its default. */
export const isDefaulted = (arg: PlanNode, parameter: FunctionArgument): boolean =>
  arg.written === 'empty' && parameter.emptyAsDefault === true && parameter.defaultValue !== undefined;

/** One argument as the function takes it; `wrong` when its kind does not fit; errors as CellError. */
export function coerceAt(callee: Callee, parameter: FunctionArgument, vector: Vector, i: number): unknown {
  const tag = vector.tags[i];
  if (tag === Tag.missing) return defaultOf(callee, parameter);
  switch (parameter.argumentType) {
    case 'NUMBER':
    case 'INTEGER':
      if (parameter.passSubtype) break;
      if (tag === Tag.error) return vector.innerAt(i);
      if (!readNumber(vector, i)) return errorOf(found.error);
      return within(found.value, parameter) ? found.value : callee.coerce(found.value, parameter);
    case 'STRING':
      return tag === Tag.error ? vector.innerAt(i) : textOf(vector, i);
    case 'BOOLEAN': {
      const truth = truthOf(vector, i);
      return truth >= 0 ? truth === 1 : truth === -1 ? wrong : vector.innerAt(i);
    }
    case 'NOERROR':
    case 'SCALAR':
      if (parameter.passSubtype) break;
      if (tag === Tag.text) return vector.textAt(i);
      return isNumberTag(tag!) ? vector.numbers[i]! : vector.innerAt(i);
    case 'RANGE':
      if (callee.typedRanges) return tag === Tag.error ? vector.innerAt(i) : rangeOfElement(vector, i);
      break;
    default:
  }
  const value = callee.coerce(vector.innerAt(i), parameter);
  return value === undefined ? wrong : value;
}

const within = (value: number, p: FunctionArgument): boolean =>
  (p.maxValue === undefined || value <= p.maxValue) &&
  (p.minValue === undefined || value >= p.minValue) &&
  (p.lessThan === undefined || value < p.lessThan) &&
  (p.greaterThan === undefined || value > p.greaterThan) &&
  (p.argumentType !== 'INTEGER' || Number.isInteger(value));

function rangeOfElement(vector: Vector, i: number): Range {
  const one = new Vector(1);
  one.mixed();
  one.copy(0, vector, i);
  return rangeOfArea({ rows: 1, columns: 1, vector: one, range: null });
}

/** Cells that ranges of the cell engine may have together before those made so far are let go: each takes some 50 bytes. */
const ENGINE_CELLS = 2 * limits.handedCells;
let engineRanges = new WeakMap<Area, SimpleRangeValue | CellError>();
let engineCells = 0;
/** Functions only read the ranges they are handed, so one object serves every row. */
function sharedEngineRange(area: Area): SimpleRangeValue | CellError {
  let range = engineRanges.get(area);
  if (!range) {
    engineCells += area.rows * area.columns;
    if (engineCells > ENGINE_CELLS) {
      engineRanges = new WeakMap();
      engineCells = area.rows * area.columns;
    }
    range = engineRange(area);
    engineRanges.set(area, range);
  }
  return range;
}

/** An area as the function takes it; where it asks for one value, the engine's way to come to one. */
function coerceArea(callee: Callee, parameter: FunctionArgument, area: Area): unknown {
  const one = takesRange(parameter) ? scalarOfArea(area) : null;
  if (one && callee.typedRanges && parameter.argumentType === 'ANY') {
    if (!readNumber(one, 0)) return errorOf(found.error);
    one.setNumber(0, found.value, found.tag);
    return rangeOfElement(one, 0);
  }
  if (one) return coerceAt(callee, parameter, one, 0);
  if (callee.typedRanges) {
    if (takesRange(parameter)) return rangeOfArea(area);
    if (area.rows * area.columns !== 1) return wrong;
  }
  const range = sharedEngineRange(area);
  return range instanceof CellError ? range : (callee.coerce(range, parameter) ?? wrong);
}

/** Cells of arrays that single-value parameters are handed, in turn: the function is called for each. */
export interface Cell {
  readonly row: number;
  readonly column: number;
}

/** The arguments that are the same in every row, coerced once a run. */
export interface Fixed {
  /** By parameter; those of arguments that vary are filled in row by row. */
  readonly values: readonly unknown[];
  /** Parameters whose argument varies. */
  readonly varying: readonly number[];
  /** The first parameter whose argument, the same in every row, cannot be taken; and the error it gives. */
  readonly failed: number;
  readonly error: CellError;
}

/** True for a value that ends the call: of a wrong kind, or an error where errors are not handed on. */
const ends = (value: unknown, parameter: FunctionArgument): boolean =>
  value === wrong || (value instanceof CellError && parameter.argumentType !== 'SCALAR');

/** `spread` when arrays in single-value parameters are taken cell by cell: those count as varying. */
export function fixedArguments(
  callee: Callee,
  parameters: readonly FunctionArgument[],
  args: readonly PlanNode[],
  frame: Frame,
  spread: boolean,
): Fixed {
  const values: unknown[] = [];
  const varying: number[] = [];
  let failed = Number.POSITIVE_INFINITY;
  let error = wrongTypeError;
  parameters.forEach((parameter, k) => {
    const arg = args[k];
    let value: unknown;
    if (!arg || isDefaulted(arg, parameter)) value = defaultOf(callee, parameter);
    else if (arg.varies || (spread && arg.is === 'area' && !takesRange(parameter))) {
      varying.push(k);
      values.push(undefined);
      return;
    } else if (arg.is === 'scalar') value = coerceAt(callee, parameter, arg.vector(frame), 0);
    else value = coerceArea(callee, parameter, arg.area(frame, 0));
    values.push(value);
    if (failed > k && ends(value, parameter)) {
      failed = k;
      if (value instanceof CellError) error = value;
    }
  });
  return { values, varying, failed, error };
}

/** Coerces what varies of one row into `handed`; the error that ends the call, or null. */
export function coerceRow(
  callee: Callee,
  parameters: readonly FunctionArgument[],
  args: readonly PlanNode[],
  fixed: Fixed,
  vectors: readonly (Vector | null)[],
  frame: Frame,
  i: number,
  cell: Cell | null,
  handed: unknown[],
): CellError | null {
  for (const k of fixed.varying) {
    if (k > fixed.failed) break;
    const parameter = parameters[k]!;
    const vector = vectors[k];
    let value: unknown;
    if (vector) value = coerceAt(callee, parameter, vector, vector.single ? 0 : i);
    else {
      const area = (args[k] as AreaNode).area(frame, i);
      value =
        cell && !takesRange(parameter)
          ? coerceCell(callee, parameter, area, cell)
          : coerceArea(callee, parameter, area);
    }
    if (ends(value, parameter)) return value instanceof CellError ? value : wrongTypeError;
    handed[k] = value;
  }
  return fixed.failed === Number.POSITIVE_INFINITY ? null : fixed.error;
}

function coerceCell(callee: Callee, parameter: FunctionArgument, area: Area, cell: Cell): unknown {
  const row = area.rows === 1 ? 0 : cell.row;
  const column = area.columns === 1 ? 0 : cell.column;
  if (row >= area.rows || column >= area.columns) return defaultOf(callee, parameter);
  return coerceAt(callee, parameter, area.vector, row * area.columns + column);
}
