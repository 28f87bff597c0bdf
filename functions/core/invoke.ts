import type { AnyDefinition } from './define.ts';
import { type Issue, isIssue, issue } from './issue.ts';
import {
  boundsInWords,
  type NumberParameter,
  type Parameter,
  type RangeParameter,
  within,
} from './parameter.ts';
import {
  type Argument,
  isRange,
  Kind,
  numberFromText,
  type Outcome,
  type Range,
  rangeOf,
  type Value,
  valueAt,
} from './value.ts';

/**
 * Calls a function with whatever a formula hands over. Every argument passes the same checks in the same order,
 * whatever the function: an error is passed on, a blank required argument is #N/A, a wrong kind #VALUE!, a number out of
 * bounds #NUM!; only then the kernel runs. Both evaluators call functions through here or prove that they would agree.
 * A kernel that throws is a fault of ours: it becomes #ERROR! instead of escaping into the engine.
 */
export function invoke(definition: AnyDefinition, given: readonly Argument[]): Outcome {
  const parameters = parametersFor(definition, given.length);
  if (isIssue(parameters)) return parameters;
  const args: Argument[] = parameters.map((_, i) => (given[i] === '' ? null : given[i]));

  for (const arg of args) {
    if (isIssue(arg)) return arg;
    if (isRange(arg)) {
      const inside = firstError(arg);
      if (inside) return inside;
    }
  }
  for (let i = 0; i < parameters.length; i++) {
    const arg = args[i];
    if (arg !== null && arg !== undefined) continue;
    if (!parameters[i]!.optional) return blankArgument(definition, parameters[i]!);
  }
  const handed: unknown[] = new Array(parameters.length);
  for (let i = 0; i < parameters.length; i++) {
    const outcome = convert(definition, parameters[i]!, args[i]);
    if (isIssue(outcome)) return outcome;
    handed[i] = outcome;
  }
  const uneven = unequalLengths(definition, parameters, handed);
  if (uneven) return uneven;
  for (let i = 0; i < parameters.length; i++) {
    const wrong = outOfBounds(definition, parameters[i]!, handed[i]);
    if (wrong) return wrong;
  }
  return run(definition, handed);
}

/** Runs the kernel on checked arguments and names the function in an issue that comes back. */
export function run(definition: AnyDefinition, handed: readonly unknown[]): Outcome {
  try {
    const outcome = definition.compute(...(handed as never[]));
    if (typeof outcome === 'number' && !Number.isFinite(outcome))
      return issue('#NUM!', 'not-finite', { function: definition.name });
    return isIssue(outcome) && !outcome.function ? { ...outcome, function: definition.name } : outcome;
  } catch (error) {
    return issue('#ERROR!', 'fault', { function: definition.name, details: { message: String(error) } });
  }
}

/** The parameters a call of this many arguments has, repeating groups laid out; an issue for a wrong count. */
export function parametersFor(definition: AnyDefinition, count: number): readonly Parameter[] | Issue {
  const { parameters, repeats = 0 } = definition;
  const required = parameters.filter((p) => !p.optional).length;
  if (count < required)
    return issue('#N/A', 'too-few-arguments', { function: definition.name, details: { count, required } });
  if (count <= parameters.length) return parameters;
  if (repeats === 0)
    return issue('#N/A', 'too-many-arguments', {
      function: definition.name,
      details: { count, most: parameters.length },
    });
  const group = parameters.slice(-repeats);
  const all = [...parameters];
  while (all.length < count) for (const p of group) all.push({ ...p, optional: true });
  return all;
}

function blankArgument(definition: AnyDefinition, parameter: Parameter): Issue {
  return issue('#N/A', 'blank-argument', {
    function: definition.name,
    parameter: parameter.name,
    expected: expectedInWords(parameter),
  });
}

/** What a parameter accepts, in words. */
export function expectedInWords(parameter: Parameter): string {
  switch (parameter.kind) {
    case 'number': {
      const unit = parameter.unit ? ` ${parameter.unit}` : '';
      return `${parameter.whole ? 'a whole number, ' : 'a number, '}${boundsInWords(parameter.bounds)}${unit}`;
    }
    case 'option':
      return `one of ${parameter.words.map((w) => `"${w}"`).join(', ')}`;
    case 'text':
      return 'a text';
    case 'yes-no':
      return 'TRUE or FALSE';
    case 'range':
      return parameter.holds === 'text' ? 'a column of names' : `a column of ${parameter.holds}s`;
  }
}

function wrongKind(definition: AnyDefinition, parameter: Parameter, received: Value | 'range'): Issue {
  return issue('#VALUE!', 'wrong-kind', {
    function: definition.name,
    parameter: parameter.name,
    ...(received === null || isIssue(received) ? {} : { received }),
    expected: expectedInWords(parameter),
  });
}

function convert(definition: AnyDefinition, parameter: Parameter, arg: Argument): unknown {
  if (arg === null || arg === undefined) return 'fallback' in parameter ? parameter.fallback : undefined;
  if (parameter.kind === 'range') {
    const range = isRange(arg) ? arg : rangeOf(1, 1, [arg]);
    return badCell(definition, parameter, range) ?? range;
  }
  const value = isRange(arg) ? (arg.kinds.length === 1 ? valueAt(arg, 0) : undefined) : arg;
  if (value === undefined) return wrongKind(definition, parameter, 'range');
  if (value === null || value === '')
    return parameter.optional
      ? 'fallback' in parameter
        ? parameter.fallback
        : undefined
      : blankArgument(definition, parameter);
  switch (parameter.kind) {
    case 'number': {
      if (typeof value === 'number') return value;
      const read = typeof value === 'string' && parameter.unit !== 'date' ? numberFromText(value) : undefined;
      return read ?? wrongKind(definition, parameter, value);
    }
    case 'option': {
      if (typeof value === 'boolean' || isIssue(value)) return wrongKind(definition, parameter, value);
      const word = String(value).trim().toLowerCase();
      const found =
        parameter.words.find((w) => w.toLowerCase() === word) ??
        Object.entries(parameter.aliases ?? {}).find(([alias]) => alias.toLowerCase() === word)?.[1];
      return found ?? wrongKind(definition, parameter, value);
    }
    case 'text':
      return isIssue(value) ? value : String(value);
    case 'yes-no':
      if (typeof value === 'boolean') return value;
      if (value === 0 || value === 1) return value === 1;
      return wrongKind(definition, parameter, value);
  }
}

function outOfBounds(definition: AnyDefinition, parameter: Parameter, value: unknown): Issue | undefined {
  if (parameter.kind === 'number' && typeof value === 'number')
    return numberOutOfBounds(definition, parameter, value);
  if (parameter.kind === 'range' && parameter.cells && isRange(value)) {
    for (const cell of numbersIn(value).values)
      if (!within(cell, parameter.cells)) return boundsIssue(definition, parameter, parameter.cells, cell);
  }
  return undefined;
}

/** The issue of a number that breaks its parameter's bounds, or undefined. */
export function numberOutOfBounds(
  definition: AnyDefinition,
  parameter: NumberParameter<unknown>,
  value: number,
): Issue | undefined {
  if (!within(value, parameter.bounds)) return boundsIssue(definition, parameter, parameter.bounds, value);
  if (parameter.whole && !Number.isInteger(value))
    return issue('#NUM!', 'not-whole', {
      function: definition.name,
      parameter: parameter.name,
      received: value,
      expected: expectedInWords(parameter),
    });
  if (parameter.divisor && value === 0)
    return issue('#DIV/0!', 'zero-divisor', {
      function: definition.name,
      parameter: parameter.name,
      received: 0,
    });
  return undefined;
}

function boundsIssue(
  definition: AnyDefinition,
  parameter: NumberParameter<unknown> | RangeParameter<unknown>,
  bounds: NumberParameter['bounds'],
  received: number,
): Issue {
  return issue('#NUM!', 'out-of-bounds', {
    function: definition.name,
    parameter: parameter.name,
    received,
    expected: boundsInWords(bounds),
    unit: parameter.unit,
    ...(bounds.because ? { remedy: bounds.because } : {}),
  });
}

function unequalLengths(
  definition: AnyDefinition,
  parameters: readonly Parameter[],
  handed: readonly unknown[],
): Issue | undefined {
  const first = new Map<string, { name: string; length: number }>();
  for (let i = 0; i < parameters.length; i++) {
    const parameter = parameters[i]!;
    const value = handed[i];
    if (parameter.kind !== 'range' || !parameter.together || !isRange(value)) continue;
    const length = value.rows * value.columns;
    const seen = first.get(parameter.together);
    if (!seen) first.set(parameter.together, { name: parameter.name, length });
    else if (seen.length !== length)
      return issue('#VALUE!', 'unequal-lengths', {
        function: definition.name,
        parameter: parameter.name,
        received: length,
        details: { other: seen.name, length: seen.length },
      });
  }
  return undefined;
}

const errorCache = new WeakMap<Range, Issue | null>();

/** The first error value in a range, or undefined. */
export function firstError(range: Range): Issue | undefined {
  let found = errorCache.get(range);
  if (found === undefined) {
    found = null;
    if (range.errors) {
      const at = range.kinds.indexOf(Kind.error);
      if (at >= 0) found = valueAt(range, at) as Issue;
    }
    errorCache.set(range, found);
  }
  return found ?? undefined;
}

/** The numbers of a range: value of each cell that has one, and where they stand. */
export interface Numbers {
  /** Values in order, blanks and `""` left out. */
  readonly values: Float64Array;
  /** Place in the range of each value. */
  readonly at: Int32Array;
  /** Place of the first cell that is neither a number nor blank, −1 if none. */
  readonly stranger: number;
  /** The same, where text that reads as a number is a stranger too (dates). */
  readonly strangerToDates: number;
}

const numbersCache = new WeakMap<Range, Numbers>();

/** Reads a range as numbers, once for each range. */
export function numbersIn(range: Range): Numbers {
  const cached = numbersCache.get(range);
  if (cached) return cached;
  const size = range.kinds.length;
  const values = new Float64Array(size);
  const at = new Int32Array(size);
  let n = 0;
  let stranger = -1;
  let strangerToDates = -1;
  for (let i = 0; i < size; i++) {
    const kind = range.kinds[i];
    if (kind === Kind.number || kind === Kind.date) {
      values[n] = range.numbers[i]!;
      at[n++] = i;
    } else if (kind === Kind.text) {
      const text = range.texts?.[i] ?? '';
      if (text === '') continue;
      if (strangerToDates < 0) strangerToDates = i;
      const read = numberFromText(text);
      if (read === undefined) {
        if (stranger < 0) stranger = i;
      } else {
        values[n] = read;
        at[n++] = i;
      }
    } else if (kind !== Kind.blank) {
      if (stranger < 0) stranger = i;
      if (strangerToDates < 0) strangerToDates = i;
    }
  }
  const result = { values: values.subarray(0, n), at: at.subarray(0, n), stranger, strangerToDates };
  numbersCache.set(range, result);
  return result;
}

function badCell(
  definition: AnyDefinition,
  parameter: RangeParameter<unknown>,
  range: Range,
): Issue | undefined {
  if (parameter.holds === 'text') return undefined;
  const numbers = numbersIn(range);
  const at = parameter.holds === 'date' ? numbers.strangerToDates : numbers.stranger;
  if (at < 0) return undefined;
  return issue('#VALUE!', 'wrong-cell', {
    function: definition.name,
    parameter: parameter.name,
    received: valueAt(range, at) as string | boolean,
    expected: parameter.holds === 'date' ? 'dates' : 'numbers',
    details: { row: Math.floor(at / range.columns) + 1 },
  });
}
