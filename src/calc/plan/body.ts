import { CellError, type FunctionArgument } from 'hyperformula';
import type { BuiltIn, Implementation } from '../builtins/builtin.ts';
import { cellEngine } from '../cell-engine/engine.ts';
import { issueOfError } from '../cell-engine/values.ts';
import {
  type Callee,
  coerceAt,
  coerceRow,
  defaultOf,
  fixedArguments,
  isDefaulted,
  parametersOf,
  takesRange,
  wrong,
  wrongCountError,
  wrongTypeError,
} from './arguments.ts';
import { elementwise } from './elementwise.ts';
import { numberLoop } from './number-loops.ts';
import type { Kernel } from './operators.ts';
import {
  type AreaNode,
  constantNode,
  type Frame,
  fixedScalar,
  oncePerRun,
  type PlanNode,
  varyingScalar,
} from './plan-nodes.ts';
import { tooManyCells, wrongCount, wrongType } from './problems.ts';
import { areaOf, call, put } from './results.ts';
import { singleVector, Tag, Vector } from './vector.ts';

/**
 * Calls of the cell engine's own functions, a row at a time, without cells: arguments are coerced by the kinds that the
 * function declares, in its order, then its body is called. Functions over ranges that have a body of ours with indexes
 * are called with that; functions of plain numbers run in a loop of their own.
 */
export function bodyNode(
  name: string,
  { implementation: { ranges, overList }, volatile }: BuiltIn,
  args: readonly PlanNode[],
): PlanNode | undefined {
  const body = cellEngine().body(name);
  if (!body) return undefined;
  const typedRanges =
    ranges !== undefined && !(ranges.oneRange && (args.length > 1 || args[0]?.is !== 'area'));
  const run = (typedRanges ? ranges.run : body.run) as Callee['run'];
  const callee: Callee = { ...body, run, typedRanges };

  const areas = args.filter((arg) => arg.is === 'area');
  if (body.metadata.expandRanges && areas.length > 0) return expanded(callee, overList, args);
  const parameters = parametersOf(callee, args.length);
  if (!parameters) return constantNode(wrongCount);
  if (args.length === 0 && volatile === 'random') {
    const kernel = scalarKernel(callee, parameters, args);
    return varyingScalar((frame, out) => kernel([], frame.count, out));
  }
  const answersArray = body.metadata.sizeOfResultArrayMethod !== undefined && !ranges?.oneCell?.(args);
  const arrays = args.some((arg, k) => arg.is === 'area' && !takesRange(parameters[k]));
  if (answersArray || (arrays && body.metadata.vectorizationForbidden))
    return arrayCall(callee, args, parameters);
  if (areas.length === 0) return elementwise(scalarKernel(callee, parameters, args), args, Tag.missing);
  if (!arrays) return rangeCall(callee, args, parameters);
  if (args.every((arg, k) => arg.is === 'scalar' || !takesRange(parameters[k])))
    return elementwise(scalarKernel(callee, parameters, args), args, Tag.missing);
  return vectorized(callee, args, parameters);
}

const notYet = Symbol('not computed yet');

/** Only single values. */
function scalarKernel(
  callee: Callee,
  parameters: readonly FunctionArgument[],
  args: readonly PlanNode[],
): Kernel {
  const numbers = numberLoop(callee, parameters, args.length);
  const left = parameters.map((parameter, k) => !args[k] || isDefaulted(args[k], parameter));
  const careful: Kernel = (vectors, n, out) => {
    out.mixed();
    const handed: unknown[] = parameters.map((parameter, k) =>
      left[k] ? defaultOf(callee, parameter) : undefined,
    );
    // what is the same in every row is coerced with the first
    const same = vectors.map((vector) => vector.single && n > 1);
    const once: unknown[] = new Array(parameters.length).fill(notYet);
    for (let i = 0; i < n; i++) {
      let failed = false;
      for (let k = 0; k < vectors.length && !failed; k++) {
        if (left[k]) continue;
        const vector = vectors[k]!;
        const parameter = parameters[k]!;
        let value: unknown;
        if (same[k] && once[k] !== notYet) value = once[k];
        else {
          value = coerceAt(callee, parameter, vector, vector.single ? 0 : i);
          once[k] = value;
        }
        if (value === wrong) out.setError(i, wrongType);
        else if (value instanceof CellError && parameter.argumentType !== 'SCALAR')
          out.setError(i, issueOfError(value, callee.name));
        else {
          handed[k] = value;
          continue;
        }
        failed = true;
      }
      if (!failed) put(out, i, callee, call(callee, handed));
    }
  };
  return (vectors, n, out) => {
    if (!numbers?.(vectors, n, out)) careful(vectors, n, out);
  };
}

const vectorsOf = (args: readonly PlanNode[], frame: Frame): (Vector | null)[] =>
  args.map((arg) => (arg.is === 'scalar' ? arg.vector(frame) : null));

/** Ranges where ranges are asked for, single values elsewhere: one value. */
function rangeCall(
  callee: Callee,
  args: readonly PlanNode[],
  parameters: readonly FunctionArgument[],
): PlanNode {
  const fixedOnce = oncePerRun((frame) => fixedArguments(callee, parameters, args, frame, false));
  const fill = (frame: Frame, out: Vector): void => {
    out.mixed();
    const vectors = vectorsOf(args, frame);
    const fixed = fixedOnce(frame);
    const handed = [...fixed.values];
    for (let i = 0; i < frame.count; i++) {
      const error = coerceRow(callee, parameters, args, fixed, vectors, frame, i, null, handed);
      put(out, i, callee, error ?? call(callee, handed));
    }
  };
  return args.some((arg) => arg.varies) ? varyingScalar(fill) : fixedScalar(fill);
}

const areaNode = (args: readonly PlanNode[], area: AreaNode['area']): AreaNode => {
  const varies = args.some((arg) => arg.varies);
  const once = oncePerRun((frame) => area(frame, 0));
  return { is: 'area', varies, written: 'value', area: varies ? area : once };
};

/** A function whose result is an array. */
function arrayCall(
  callee: Callee,
  args: readonly PlanNode[],
  parameters: readonly FunctionArgument[],
): PlanNode {
  const fixedOnce = oncePerRun((frame) => fixedArguments(callee, parameters, args, frame, false));
  return areaNode(args, (frame, index) => {
    const fixed = fixedOnce(frame);
    const handed = [...fixed.values];
    const error = coerceRow(
      callee,
      parameters,
      args,
      fixed,
      vectorsOf(args, frame),
      frame,
      index,
      null,
      handed,
    );
    return areaOf(callee, error ?? call(callee, handed));
  });
}

/** A function over ranges with an array where it asks for one value: called for each cell of the array. */
function vectorized(
  callee: Callee,
  args: readonly PlanNode[],
  parameters: readonly FunctionArgument[],
): PlanNode {
  const fixedOnce = oncePerRun((frame) => fixedArguments(callee, parameters, args, frame, true));
  return areaNode(args, (frame, index) => {
    const vectors = vectorsOf(args, frame);
    const fixed = fixedOnce(frame);
    const handed = [...fixed.values];
    let rows = 1;
    let columns = 1;
    let given = 1;
    args.forEach((arg, k) => {
      if (arg.is === 'scalar' || takesRange(parameters[k])) return;
      const area = arg.area(frame, index);
      rows = Math.max(rows, area.rows);
      columns = Math.max(columns, area.columns);
      given = Math.max(given, area.rows * area.columns);
    });
    const tooMany = tooManyCells(rows * columns, given);
    if (tooMany) return { rows: 1, columns: 1, vector: singleVector(tooMany), range: null };
    const out = new Vector(rows * columns);
    out.mixed();
    for (let row = 0; row < rows; row++)
      for (let column = 0; column < columns; column++) {
        const cell = { row, column };
        const error = coerceRow(callee, parameters, args, fixed, vectors, frame, index, cell, handed);
        put(out, row * columns + column, callee, error ?? call(callee, handed));
      }
    return { rows, columns, vector: out, range: null };
  });
}

/** Functions that take the cells of ranges one by one (CONCATENATE); what cannot be coerced in a range is skipped. */
function expanded(callee: Callee, overList: Implementation['overList'], args: readonly PlanNode[]): PlanNode {
  const fill = (frame: Frame, out: Vector): void => {
    out.mixed();
    const vectors = vectorsOf(args, frame);
    for (let i = 0; i < frame.count; i++)
      put(out, i, callee, callExpanded(callee, overList, args, vectors, frame, i));
  };
  return args.some((arg) => arg.varies) ? varyingScalar(fill) : fixedScalar(fill);
}

function callExpanded(
  callee: Callee,
  overList: Implementation['overList'],
  args: readonly PlanNode[],
  vectors: readonly (Vector | null)[],
  frame: Frame,
  i: number,
): unknown {
  const cells: [vector: Vector, at: number, inRange: boolean][] = [];
  args.forEach((arg, k) => {
    if (arg.is === 'scalar') cells.push([vectors[k]!, vectors[k]!.single ? 0 : i, false]);
    else {
      const area = arg.area(frame, i);
      const size = area.rows * area.columns;
      for (let j = 0; j < size; j++) cells.push([area.vector, j, size > 1]);
    }
  });
  const parameters = parametersOf(callee, cells.length);
  if (!parameters) return wrongCountError;
  const handed: unknown[] = [];
  for (let k = 0; k < cells.length; k++) {
    const [vector, at, inRange] = cells[k]!;
    const value = coerceAt(callee, parameters[k]!, vector, at);
    if (value === wrong && !inRange) return wrongTypeError;
    if (value instanceof CellError && parameters[k]!.argumentType !== 'SCALAR') return value;
    handed.push(value === wrong ? undefined : value);
  }
  return overList && handed.length > FEW ? overList(handed) : call(callee, handed);
}

/** More arguments than these might not fit on the stack. */
const FEW = 1000;
