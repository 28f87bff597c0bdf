import { convert, plain } from '../../../functions/core/convert.ts';
import type { AnyDefinition } from '../../../functions/core/define.ts';
import { firstError, invoke, numbersIn } from '../../../functions/core/invoke.ts';
import { isIssue, issue } from '../../../functions/core/issue.ts';
import { within } from '../../../functions/core/parameter.ts';
import { type Prepared, prepare } from '../../../functions/core/prepare.ts';
import { type Argument, isMatrix, isRange, type Outcome } from '../../../functions/core/value.ts';
import { areaOfMatrix, rangeOfArea } from './areas.ts';
import { domainLoop } from './domain-loops.ts';
import {
  type Area,
  type AreaNode,
  BLOCK,
  constantNode,
  type Frame,
  fixedScalar,
  oncePerRun,
  type PlanNode,
  type ScalarNode,
  varyingScalar,
} from './plan-nodes.ts';
import { Tag, type Vector } from './vector.ts';

/** A call of a function of the domain. */
export function domainNode(definition: AnyDefinition, args: readonly PlanNode[]): PlanNode {
  const prepared = prepare(definition, args.length);
  if (isIssue(prepared)) return constantNode(prepared);
  const varies = args.some((arg) => arg.varies);
  if (definition.result.is === 'column') return columnResult(definition, args, varies);
  if (!varies) return fixedScalar((frame, out) => settle(out, 0, invoke(definition, given(args, frame, 0))));
  if (args.some((arg) => arg.is === 'area' && arg.varies))
    return varyingScalar((frame, out) => {
      out.mixed();
      for (let i = 0; i < frame.count; i++) settle(out, i, invoke(definition, given(args, frame, i)));
    });
  return loopNode(prepared, args);
}

/** The arguments of one row as the function is handed them. */
function given(args: readonly PlanNode[], frame: Frame, index: number): Argument[] {
  return args.map((arg) => {
    if (arg.is === 'area') return rangeOfArea(arg.area(frame, index));
    const vector = arg.vector(frame);
    return vector.valueAt(vector.single ? 0 : index);
  });
}

export function settle(out: Vector, i: number, outcome: Outcome | null): void {
  if (!isMatrix(outcome)) out.setValue(i, outcome);
  else if (outcome.values.length === 1) out.setValue(i, outcome.values[0]);
  else out.setError(i, arrayInOneCell(outcome.rows, outcome.columns));
}

/** An array that has no room in its row. */
export const arrayInOneCell = (rows: number, columns: number) =>
  issue('#SPILL!', 'array-in-row', { details: { rows, columns } });

function columnResult(definition: AnyDefinition, args: readonly PlanNode[], varies: boolean): AreaNode {
  const compute = (frame: Frame, index: number): Area =>
    areaOfMatrix(invoke(definition, given(args, frame, index)));
  const once = oncePerRun((frame) => compute(frame, 0));
  return { is: 'area', varies, written: 'value', area: varies ? compute : once };
}

/** What is handed for the arguments that are the same in every row, once checked; null when they fail a check. */
function constants(prepared: Prepared, args: readonly PlanNode[], frame: Frame): unknown[] | null {
  const { definition, parameters } = prepared;
  const handed: unknown[] = [...prepared.fallback];
  const lengths = new Map<string, number>();
  for (let k = 0; k < args.length; k++) {
    const arg = args[k]!;
    const parameter = parameters[k]!;
    if (arg.varies) {
      if (parameter.kind === 'range') return null;
      continue;
    }
    const value = plain(
      parameter,
      arg.is === 'area' ? rangeOfArea(arg.area(frame, 0)) : arg.vector(frame).valueAt(0),
    );
    if (isIssue(value) || (isRange(value) && firstError(value))) return null;
    if (value === undefined && !parameter.optional) return null;
    const converted = convert(definition, parameter, value);
    if (isIssue(converted)) return null;
    if (parameter.kind === 'number' && typeof converted === 'number') {
      if (!within(converted, parameter.bounds)) return null;
      if (parameter.whole && !Number.isInteger(converted)) return null;
      if (parameter.divisor && converted === 0) return null;
    }
    if (parameter.kind === 'range' && isRange(converted)) {
      if (parameter.cells)
        for (const cell of numbersIn(converted).values) if (!within(cell, parameter.cells)) return null;
      if (parameter.together) {
        const length = converted.rows * converted.columns;
        if ((lengths.get(parameter.together) ?? length) !== length) return null;
        lengths.set(parameter.together, length);
      }
    }
    handed[k] = converted;
  }
  return handed;
}

/** The rows in which every argument is plain call the kernel directly; the others go through all checks. */
function loopNode(prepared: Prepared, args: readonly PlanNode[]): ScalarNode {
  const { definition, parameters } = prepared;
  const size = parameters.length;
  const loop = domainLoop(size, (definition.repeats ?? 0) > 0);
  const handedOnce = oncePerRun((frame) => constants(prepared, args, frame));
  const columns: (ArrayLike<unknown> | null)[] = new Array(size).fill(null);
  const words: unknown[][] = parameters.map(() => []);
  const odd = new Uint8Array(BLOCK);
  const rest: unknown[] = [];
  const vectors: (Vector | null)[] = new Array(args.length).fill(null);

  return varyingScalar((frame, out) => {
    const n = frame.count;
    const handed = handedOnce(frame);
    odd.fill(handed ? 0 : 1, 0, n);
    let marked = handed === null;
    for (let k = 0; k < args.length; k++) {
      const arg = args[k]!;
      if (arg.is === 'area' || !arg.varies) continue;
      const column = arg.vector(frame);
      vectors[k] = column;
      if (!handed) continue;
      if (parameters[k]!.kind === 'number') {
        columns[k] = column.numbers;
        if (markNumbers(prepared, k, column, odd, n)) marked = true;
      } else {
        columns[k] = words[k]!;
        if (markOthers(prepared, k, column, words[k]!, odd, n)) marked = true;
      }
    }
    if (handed) {
      try {
        if (loop(prepared.call, columns, handed, odd, out.numbers, rest, n)) marked = true;
      } catch {
        odd.fill(1, 0, n);
        marked = true;
      }
    }
    if (!marked) {
      out.allNumbers(n);
      return;
    }
    out.mixed();
    for (let i = 0; i < n; i++) {
      if (odd[i] === 0) out.tags[i] = Tag.number;
      else if (odd[i] === 2 && (typeof rest[i] === 'string' || typeof rest[i] === 'boolean'))
        out.setValue(i, rest[i] as string | boolean);
      else settle(out, i, invoke(definition, row(args, vectors, frame, i)));
    }
  });
}

function row(
  args: readonly PlanNode[],
  vectors: readonly (Vector | null)[],
  frame: Frame,
  i: number,
): Argument[] {
  return args.map((arg, k) => {
    if (arg.is === 'area') return rangeOfArea(arg.area(frame, i));
    const column = arg.varies ? vectors[k]! : arg.vector(frame);
    return column.valueAt(column.single ? 0 : i);
  });
}

/** Marks the rows whose number is missing, of another kind or out of bounds. */
function markNumbers(
  { least, most, whole, notZero }: Prepared,
  k: number,
  column: Vector,
  odd: Uint8Array,
  n: number,
): boolean {
  const { tags, numbers } = column;
  const low = least[k]!;
  const high = most[k]!;
  let marked = false;
  if (!column.plain)
    for (let i = 0; i < n; i++)
      if (tags[i] !== Tag.number && tags[i] !== Tag.date && tags[i]! < Tag.time) {
        odd[i] = 1;
        marked = true;
      }
  for (let i = 0; i < n; i++)
    if (!(numbers[i]! >= low && numbers[i]! <= high)) {
      odd[i] = 1;
      marked = true;
    }
  const mustBeWhole = whole[k] === 1;
  const mustNotBeZero = notZero[k] === 1;
  for (let i = 0; (mustBeWhole || mustNotBeZero) && i < n; i++) {
    const wrong = (mustBeWhole && !Number.isInteger(numbers[i])) || (mustNotBeZero && numbers[i] === 0);
    if (!wrong) continue;
    odd[i] = 1;
    marked = true;
  }
  return marked;
}

/** Lays out words, names and yes/no of a column as the kernel takes them; marks the rows that need all checks. */
function markOthers(
  prepared: Prepared,
  k: number,
  column: Vector,
  into: unknown[],
  odd: Uint8Array,
  n: number,
): boolean {
  const parameter = prepared.parameters[k]!;
  let marked = false;
  for (let i = 0; i < n; i++) {
    const tag = column.tags[i];
    const text = tag === Tag.text ? column.textAt(i) : '';
    let value: unknown;
    if ((tag === Tag.blank || (tag === Tag.text && text === '')) && parameter.optional) {
      into[i] = prepared.fallback[k];
      continue;
    }
    if (parameter.kind === 'option') value = text === '' ? undefined : prepared.word(k, text);
    else if (parameter.kind === 'text') value = text === '' ? undefined : text;
    else if (parameter.kind === 'yes-no') value = tag === Tag.yesNo ? column.numbers[i] !== 0 : undefined;
    into[i] = value;
    if (value === undefined) {
      odd[i] = 1;
      marked = true;
    }
  }
  return marked;
}
