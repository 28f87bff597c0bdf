import type { FunctionArgument } from 'hyperformula';
import type { Callee } from './arguments.ts';
import { isNumberTag, Tag, type Vector } from './vector.ts';

/** Computes n elements if every argument is a number within the function's bounds; false: nothing was done. */
export type NumberLoop = (vectors: readonly Vector[], n: number, out: Vector) => boolean;

type Run = (...args: unknown[]) => unknown;

/**
 * The loop for a function of one to three numbers, or null. Where the function answers something other than a finite
 * number, the loop gives up and the careful way computes the block again.
 */
export function numberLoop(
  callee: Callee,
  parameters: readonly FunctionArgument[],
  count: number,
): NumberLoop | null {
  const sort = callee.metadata.returnNumberType;
  if (count === 0 || count > 3 || (sort !== undefined && sort !== 'NUMBER_RAW' && sort !== 'NUMBER_DATE'))
    return null;
  if (!parameters.every((p) => p.argumentType === 'NUMBER' || p.argumentType === 'INTEGER')) return null;
  if (parameters.some((p) => p.passSubtype)) return null;
  const run = callee.run as Run;
  const rest = parameters.slice(count).map((p) => p.defaultValue);
  const limits = parameters.slice(0, count).map(limitsOf);
  const loop = count === 1 ? one : count === 2 ? two : three;
  return (vectors, n, out) => {
    for (let k = 0; k < count; k++) {
      const vector = vectors[k]!;
      if (
        !allNumbers(vector, vector.single ? 1 : n) ||
        !keeps(vector.numbers, vector.single ? 1 : n, limits[k]!)
      )
        return false;
    }
    if (!loop(run, vectors, rest, n, out.numbers)) return false;
    if (sort === 'NUMBER_DATE') out.all(Tag.date, n);
    else out.allNumbers(n);
    return true;
  };
}

function allNumbers(vector: Vector, n: number): boolean {
  if (vector.plain) return true;
  for (let i = 0; i < n; i++) if (!isNumberTag(vector.tags[i]!)) return false;
  return true;
}

interface Limits {
  readonly parameter: FunctionArgument;
  readonly none: boolean;
}
const limitsOf = (parameter: FunctionArgument): Limits => ({
  parameter,
  none:
    parameter.argumentType === 'NUMBER' &&
    parameter.minValue === undefined &&
    parameter.maxValue === undefined &&
    parameter.lessThan === undefined &&
    parameter.greaterThan === undefined,
});

function keeps(numbers: Float64Array, n: number, { parameter, none }: Limits): boolean {
  if (none) return true;
  const low = Math.max(parameter.minValue ?? -Infinity, parameter.greaterThan ?? -Infinity);
  const high = Math.min(parameter.maxValue ?? Infinity, parameter.lessThan ?? Infinity);
  const lowOut = parameter.greaterThan !== undefined && parameter.greaterThan >= low;
  const highOut = parameter.lessThan !== undefined && parameter.lessThan <= high;
  const whole = parameter.argumentType === 'INTEGER';
  for (let i = 0; i < n; i++) {
    const x = numbers[i]!;
    if (x < low || x > high || (lowOut && x === low) || (highOut && x === high)) return false;
    if (whole && !Number.isInteger(x)) return false;
  }
  return true;
}

type Loop = (
  run: Run,
  vectors: readonly Vector[],
  rest: readonly unknown[],
  n: number,
  out: Float64Array,
) => boolean;

const one: Loop = (run, vectors, [d0, d1], n, out) => {
  const a = vectors[0]!.numbers;
  const s = vectors[0]!.single ? 0 : 1;
  for (let i = 0; i < n; i++) {
    const r = d0 === undefined ? run(a[i * s]) : run(a[i * s], d0, d1);
    if (typeof r !== 'number' || r - r !== 0) return false;
    out[i] = r + 0;
  }
  return true;
};
const two: Loop = (run, vectors, [d0], n, out) => {
  const a = vectors[0]!.numbers;
  const b = vectors[1]!.numbers;
  const s = vectors[0]!.single ? 0 : 1;
  const t = vectors[1]!.single ? 0 : 1;
  for (let i = 0; i < n; i++) {
    const r = d0 === undefined ? run(a[i * s], b[i * t]) : run(a[i * s], b[i * t], d0);
    if (typeof r !== 'number' || r - r !== 0) return false;
    out[i] = r + 0;
  }
  return true;
};
const three: Loop = (run, vectors, _rest, n, out) => {
  const a = vectors[0]!.numbers;
  const b = vectors[1]!.numbers;
  const c = vectors[2]!.numbers;
  const s = vectors[0]!.single ? 0 : 1;
  const t = vectors[1]!.single ? 0 : 1;
  const u = vectors[2]!.single ? 0 : 1;
  for (let i = 0; i < n; i++) {
    const r = run(a[i * s], b[i * t], c[i * u]);
    if (typeof r !== 'number' || r - r !== 0) return false;
    out[i] = r + 0;
  }
  return true;
};
