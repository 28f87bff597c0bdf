import { blankArgument, convert, expectedInWords, plain } from './convert.ts';
import type { AnyDefinition } from './define.ts';
import { type Issue, isIssue, issue } from './issue.ts';
import { type Bounds, boundsInWords, type Parameter, within } from './parameter.ts';
import { firstError, numbersIn } from './range-numbers.ts';
import { type Argument, isRange, type Outcome } from './value.ts';

export { expectedInWords } from './convert.ts';
export { firstError, type Numbers, numbersIn } from './range-numbers.ts';

/**
 * Calls a function with whatever a formula hands over. Every argument passes the same checks in the same order,
 * whatever the function: an error is passed on, a blank required argument is #N/A, a wrong kind, unequal lengths or
 * arguments that clash #VALUE!, a number out of bounds #NUM!, a zero divisor #DIV/0!; only then the kernel runs. Both
 * evaluators call functions through here or prove that they would agree (`prepare`).
 * A kernel that throws is a fault of ours: it becomes #ERROR! instead of escaping into the engine.
 */
export function invoke(definition: AnyDefinition, given: readonly Argument[]): Outcome {
  const parameters = parametersFor(definition, given.length);
  if (isIssue(parameters)) return parameters;

  for (const arg of given) {
    const error = isIssue(arg) ? arg : isRange(arg) ? firstError(arg) : undefined;
    if (error) return error;
  }
  const args = parameters.map((parameter, i) => plain(parameter, given[i]));
  for (let i = 0; i < parameters.length; i++) {
    if (args[i] === undefined && !parameters[i]!.optional) return blankArgument(definition, parameters[i]!);
  }
  const handed: unknown[] = new Array(parameters.length);
  for (let i = 0; i < parameters.length; i++) {
    const outcome = convert(definition, parameters[i]!, args[i]);
    if (isIssue(outcome)) return outcome;
    handed[i] = outcome;
  }
  const wrong =
    unequalLengths(definition, parameters, handed) ??
    definition.clash?.(...(handed as never[])) ??
    outOfBounds(definition, parameters, handed) ??
    zeroDivisor(definition, parameters, handed);
  return wrong ? named(definition, wrong) : run(definition, handed);
}

/** Runs the kernel on checked arguments and names the function in an issue that comes back. */
export function run(definition: AnyDefinition, handed: readonly unknown[]): Outcome {
  try {
    const outcome = definition.compute(...(handed as never[]));
    if (typeof outcome === 'number' && !Number.isFinite(outcome))
      return issue('#NUM!', 'not-finite', { function: definition.name });
    return isIssue(outcome) ? named(definition, outcome) : outcome;
  } catch (error) {
    return issue('#ERROR!', 'fault', { function: definition.name, details: { message: String(error) } });
  }
}

const named = (definition: AnyDefinition, wrong: Issue): Issue =>
  wrong.function ? wrong : { ...wrong, function: definition.name };

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
  while (all.length < count)
    for (const p of group)
      all.push({ ...p, name: numbered(p.name, all.length, parameters.length, repeats), optional: true });
  return all;
}

/** Names of repeated parameters count on: weight1, weight2, … */
function numbered(name: string, place: number, first: number, repeats: number): string {
  const [, stem, digits] = /^(.*?)(\d+)$/.exec(name) ?? [];
  if (stem === undefined || digits === undefined) return name;
  return `${stem}${Number(digits) + 1 + Math.floor((place - first) / repeats)}`;
}

function outOfBounds(
  definition: AnyDefinition,
  parameters: readonly Parameter[],
  handed: readonly unknown[],
): Issue | undefined {
  for (let i = 0; i < parameters.length; i++) {
    const parameter = parameters[i]!;
    const value = handed[i];
    if (parameter.kind === 'number' && typeof value === 'number') {
      if (!within(value, parameter.bounds))
        return boundsIssue(definition, parameter, parameter.bounds, value);
      if (parameter.whole && !Number.isInteger(value))
        return issue('#NUM!', 'not-whole', {
          function: definition.name,
          parameter: parameter.name,
          received: value,
          expected: expectedInWords(parameter),
        });
    } else if (parameter.kind === 'range' && parameter.cells && isRange(value)) {
      const { values, at } = numbersIn(value);
      for (let n = 0; n < values.length; n++)
        if (!within(values[n]!, parameter.cells))
          return boundsIssue(definition, parameter, parameter.cells, values[n]!, {
            row: Math.floor(at[n]! / value.columns) + 1,
          });
    }
  }
  return undefined;
}

function boundsIssue(
  definition: AnyDefinition,
  parameter: Parameter & { kind: 'number' | 'range' },
  bounds: Bounds,
  received: number,
  details?: Readonly<Record<string, number>>,
): Issue {
  return issue('#NUM!', 'out-of-bounds', {
    function: definition.name,
    parameter: parameter.name,
    received,
    expected: boundsInWords(bounds),
    unit: parameter.unit,
    ...(bounds.because ? { remedy: bounds.because } : {}),
    ...(details ? { details } : {}),
  });
}

function zeroDivisor(
  definition: AnyDefinition,
  parameters: readonly Parameter[],
  handed: readonly unknown[],
): Issue | undefined {
  for (let i = 0; i < parameters.length; i++) {
    const parameter = parameters[i]!;
    if (parameter.kind === 'number' && parameter.divisor && handed[i] === 0)
      return issue('#DIV/0!', 'zero-divisor', {
        function: definition.name,
        parameter: parameter.name,
        received: 0,
      });
  }
  return undefined;
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
