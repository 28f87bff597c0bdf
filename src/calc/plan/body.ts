import { CellError, EmptyValue, type FunctionArgument, SimpleRangeValue } from 'hyperformula';
import type { FunctionBody } from '../cell-engine/engine.ts';
import { type Inner, isRich, issueOfError } from '../cell-engine/values.ts';
import { areaOfEngineRange, engineRange } from './areas.ts';
import { found, readNumber, textOf, truthOf } from './coerce.ts';
import { type Lanes, Tag, wrongCount, wrongType } from './lanes.ts';
import {
  type Area,
  constantNode,
  elementwise,
  type Frame,
  fixedScalar,
  oncePerRun,
  type PlanNode,
  scalarOfArea,
  varyingScalar,
} from './nodes.ts';
import { numberLoop } from './number-loops.ts';
import type { Kernel } from './operators.ts';

/**
 * Calls of the cell engine's own functions, a row at a time, without cells: arguments are coerced by the kinds that the
 * function declares, in its order, then its body is called. Functions of plain numbers run in a loop of their own.
 */

/** A parameter for each argument, repeated ones laid out; null for a wrong number of arguments. */
export function parametersOf(body: FunctionBody, count: number): readonly FunctionArgument[] | null {
  const all = [...body.parameters];
  const repeat = body.metadata.repeatLastArgs ?? 0;
  if (repeat > 0) while (count > all.length) all.push(...all.slice(all.length - repeat));
  if (count > all.length) return null;
  const missing = all.slice(count);
  return missing.every((p) => p.optionalArg || p.defaultValue !== undefined) ? all : null;
}

const takesRange = (parameter: FunctionArgument | undefined): boolean =>
  parameter?.argumentType === 'RANGE' || parameter?.argumentType === 'ANY';

const volatile = new Set(['RAND', 'RANDBETWEEN']);

/** A call of a function of the cell engine. */
export function bodyNode(body: FunctionBody, args: readonly PlanNode[]): PlanNode {
  if (body.metadata.expandRanges && args.some((arg) => arg.is === 'area')) return expanded(body, args);
  const parameters = parametersOf(body, args.length);
  if (!parameters) return constantNode(wrongCount);
  const hasRange = args.some((arg, k) => arg.is === 'area' && takesRange(parameters[k]));
  const hasArray = args.some((arg, k) => arg.is === 'area' && !takesRange(parameters[k]));
  if (body.metadata.sizeOfResultArrayMethod || (hasRange && hasArray))
    return arrayCall(body, args, parameters);
  if (hasRange) return rangeCall(body, args, parameters);
  const kernel = scalarKernel(body, parameters, args);
  if (args.length === 0 && volatile.has(body.name))
    return varyingScalar((frame, out) => kernel([], frame.count, out));
  return elementwise(kernel, args);
}

/** Only single values. */
function scalarKernel(
  body: FunctionBody,
  parameters: readonly FunctionArgument[],
  args: readonly PlanNode[],
): Kernel {
  const empty = args.map((arg) => arg.written === 'empty');
  const numbers = numberLoop(body, parameters, args.length);
  const slow: Kernel = (lanes, n, out) => {
    out.mixed();
    const handed: unknown[] = new Array(parameters.length);
    for (let i = 0; i < n; i++) {
      let failed = false;
      for (let k = 0; k < parameters.length && !failed; k++) {
        const lane = lanes[k];
        const parameter = parameters[k]!;
        const value =
          lane === undefined || (empty[k] && parameter.emptyAsDefault && parameter.defaultValue !== undefined)
            ? defaultOf(body, parameter)
            : coerceLane(body, parameter, lane, lane.single ? 0 : i);
        if (value === wrong) {
          out.setError(i, wrongType);
          failed = true;
        } else if (value instanceof CellError && parameter.argumentType !== 'SCALAR') {
          out.setError(i, issueOfError(value, body.name));
          failed = true;
        } else handed[k] = value;
      }
      if (!failed) put(out, i, body, body.run(...handed));
    }
  };
  return (lanes, n, out) => {
    if (!numbers || !numbers(lanes, n, out)) slow(lanes, n, out);
  };
}

const wrong = Symbol('wrong kind');

function defaultOf(body: FunctionBody, parameter: FunctionArgument): unknown {
  const value = parameter.defaultValue;
  return value === undefined ? undefined : body.coerce(value as Inner, parameter);
}

/** One argument as the function takes it; `wrong` when its kind does not fit; errors as CellError. */
function coerceLane(body: FunctionBody, parameter: FunctionArgument, lanes: Lanes, i: number): unknown {
  switch (parameter.argumentType) {
    case 'NUMBER':
    case 'INTEGER':
      if (parameter.passSubtype) break;
      if (lanes.tags[i] === Tag.error) return lanes.innerAt(i);
      if (!readNumber(lanes, i)) return body.coerce(lanes.innerAt(i), parameter);
      return within(found.value, parameter) ? found.value : body.coerce(found.value, parameter);
    case 'STRING':
      return lanes.tags[i] === Tag.error ? lanes.innerAt(i) : textOf(lanes, i);
    case 'BOOLEAN': {
      const truth = truthOf(lanes, i);
      return truth >= 0 ? truth === 1 : truth === -1 ? wrong : lanes.innerAt(i);
    }
    default:
  }
  const value = body.coerce(lanes.innerAt(i), parameter);
  return value === undefined ? wrong : value;
}

export const within = (value: number, p: FunctionArgument): boolean =>
  (p.maxValue === undefined || value <= p.maxValue) &&
  (p.minValue === undefined || value >= p.minValue) &&
  (p.lessThan === undefined || value < p.lessThan) &&
  (p.greaterThan === undefined || value > p.greaterThan) &&
  (p.argumentType !== 'INTEGER' || Number.isInteger(value));

const tagOfResult: Readonly<Record<string, number>> = {
  NUMBER_DATE: Tag.date,
  NUMBER_TIME: Tag.time,
  NUMBER_DATETIME: Tag.dateTime,
  NUMBER_PERCENT: Tag.percent,
  NUMBER_CURRENCY: Tag.currency,
};

/** The sort of number that a function declares to return. */
export const resultTag = (body: FunctionBody): number =>
  tagOfResult[body.metadata.returnNumberType ?? ''] ?? Tag.number;

function put(out: Lanes, i: number, body: FunctionBody, result: Inner | SimpleRangeValue | undefined): void {
  if (result instanceof SimpleRangeValue) {
    const area = areaOfEngineRange(result, body.name);
    if (area.rows * area.columns === 1) out.copy(i, area.lanes, 0);
    else out.setError(i, wrongType);
  } else if (body.metadata.returnNumberType && (typeof result === 'number' || isRich(result)))
    out.setNumber(i, typeof result === 'number' ? result : result.val, resultTag(body));
  else out.setInner(i, result, body.name);
}

const engineRanges = new WeakMap<Area, SimpleRangeValue>();
/** Functions only read the ranges they are handed, so one object serves every row. */
export function sharedEngineRange(area: Area): SimpleRangeValue {
  let range = engineRanges.get(area);
  if (!range) {
    range = engineRange(area);
    engineRanges.set(area, range);
  }
  return range;
}

/** All arguments of one row, coerced; or the error that ends the call. */
function coerceRow(
  body: FunctionBody,
  parameters: readonly FunctionArgument[],
  args: readonly PlanNode[],
  lanes: readonly (Lanes | null)[],
  frame: Frame,
  i: number,
): unknown[] | CellError | typeof wrong {
  const handed: unknown[] = [];
  for (let k = 0; k < parameters.length; k++) {
    const parameter = parameters[k]!;
    const arg = args[k];
    let value: unknown;
    if (!arg || (arg.written === 'empty' && parameter.emptyAsDefault && parameter.defaultValue !== undefined))
      value = defaultOf(body, parameter);
    else if (arg.is === 'scalar') {
      const lane = lanes[k]!;
      value = coerceLane(body, parameter, lane, lane.single ? 0 : i);
    } else {
      const area = arg.area(frame, i);
      const one = scalarOfArea(area);
      if (one) value = coerceLane(body, parameter, one, 0);
      else value = body.coerce(sharedEngineRange(area), parameter) ?? wrong;
    }
    if (value === wrong) return wrong;
    if (value instanceof CellError && parameter.argumentType !== 'SCALAR') return value;
    handed.push(value);
  }
  return handed;
}

function callRow(
  body: FunctionBody,
  parameters: readonly FunctionArgument[],
  args: readonly PlanNode[],
  lanes: readonly (Lanes | null)[],
  frame: Frame,
  i: number,
): Inner | SimpleRangeValue | typeof wrong {
  const handed = coerceRow(body, parameters, args, lanes, frame, i);
  if (handed === wrong || handed instanceof CellError) return handed;
  return body.run(...handed);
}

const lanesOf = (args: readonly PlanNode[], frame: Frame): (Lanes | null)[] =>
  args.map((arg) => (arg.is === 'scalar' ? arg.lanes(frame) : null));

/** Ranges where ranges are asked for, single values elsewhere. */
function rangeCall(
  body: FunctionBody,
  args: readonly PlanNode[],
  parameters: readonly FunctionArgument[],
): PlanNode {
  const fill = (frame: Frame, out: Lanes): void => {
    out.mixed();
    const lanes = lanesOf(args, frame);
    for (let i = 0; i < frame.count; i++) {
      const result = callRow(body, parameters, args, lanes, frame, i);
      if (result === wrong) out.setError(i, wrongType);
      else put(out, i, body, result);
    }
  };
  return args.some((arg) => arg.varies) ? varyingScalar(fill) : fixedScalar(fill);
}

/** A function whose result is an array; also a single-value parameter that is handed an array beside a range. */
function arrayCall(
  body: FunctionBody,
  args: readonly PlanNode[],
  parameters: readonly FunctionArgument[],
): PlanNode {
  const one = (frame: Frame, lane: number): Area => {
    const result = callRow(body, parameters, args, lanesOf(args, frame), frame, lane);
    if (result instanceof SimpleRangeValue) return areaOfEngineRange(result, body.name);
    return areaOfEngineRange(
      SimpleRangeValue.fromScalar(result === wrong ? wrongTypeError : result),
      body.name,
    );
  };
  const varies = args.some((arg) => arg.varies);
  const once = oncePerRun((frame) => one(frame, 0));
  return { is: 'area', varies, written: 'value', area: varies ? one : once };
}
const wrongTypeError = new CellError('VALUE' as CellError['type'], wrongType.details?.message as string);

/** Functions that take the cells of ranges one by one (AND, CONCATENATE); what cannot be coerced in a range is skipped. */
function expanded(body: FunctionBody, args: readonly PlanNode[]): PlanNode {
  const fill = (frame: Frame, out: Lanes): void => {
    out.mixed();
    const lanes = lanesOf(args, frame);
    for (let i = 0; i < frame.count; i++) put(out, i, body, callExpanded(body, args, lanes, frame, i));
  };
  return args.some((arg) => arg.varies) ? varyingScalar(fill) : fixedScalar(fill);
}

function callExpanded(
  body: FunctionBody,
  args: readonly PlanNode[],
  lanes: readonly (Lanes | null)[],
  frame: Frame,
  i: number,
): Inner | SimpleRangeValue {
  const cells: [Lanes, number, boolean][] = [];
  args.forEach((arg, k) => {
    if (arg.is === 'scalar') cells.push([lanes[k]!, lanes[k]!.single ? 0 : i, false]);
    else {
      const area = arg.area(frame, i);
      const size = area.rows * area.columns;
      for (let j = 0; j < size; j++) cells.push([area.lanes, j, size > 1]);
    }
  });
  const parameters = parametersOf(body, cells.length);
  if (!parameters) return new CellError('NA' as CellError['type'], wrongCount.details?.message as string);
  const handed: unknown[] = [];
  for (let k = 0; k < cells.length; k++) {
    const [lane, at, inRange] = cells[k]!;
    const value = coerceLane(body, parameters[k]!, lane, at);
    if (value === wrong && !inRange) return wrongTypeError;
    if (value instanceof CellError && parameters[k]!.argumentType !== 'SCALAR') return value;
    handed.push(value === wrong ? undefined : value);
  }
  return body.run(...handed);
}

export { EmptyValue };
