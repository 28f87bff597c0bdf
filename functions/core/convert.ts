import type { AnyDefinition } from './define.ts';
import { type Issue, isIssue, issue } from './issue.ts';
import { boundsInWords, type Parameter, type RangeParameter } from './parameter.ts';
import { numbersIn } from './range-numbers.ts';
import { type Argument, isRange, numberFromText, type Range, rangeOf, type Value, valueAt } from './value.ts';

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

/** The issue of a required argument with nothing in it. */
export const blankArgument = (definition: AnyDefinition, parameter: Parameter): Issue =>
  issue('#N/A', 'blank-argument', {
    function: definition.name,
    parameter: parameter.name,
    expected: expectedInWords(parameter),
  });

/**
 * What an argument comes to before any check: a range of one cell is its value where one value is asked, and `""` is
 * blank. A blank is `undefined`.
 */
export function plain(parameter: Parameter, given: Argument): Exclude<Argument, null> {
  const value =
    parameter.kind !== 'range' && isRange(given) && given.kinds.length === 1 ? valueAt(given, 0) : given;
  return value === '' || value === null ? undefined : value;
}

/** What is handed for an argument that is blank or left out. */
export const fallbackOf = (parameter: Parameter): unknown =>
  'fallback' in parameter ? parameter.fallback : undefined;

/** The word that a text stands for among those of an option, or undefined. */
export function wordOf(parameter: Parameter & { kind: 'option' }, text: string): string | undefined {
  const word = text.trim().toLowerCase();
  return (
    parameter.words.find((w) => w.toLowerCase() === word) ??
    Object.entries(parameter.aliases ?? {}).find(([alias]) => alias.toLowerCase() === word)?.[1]
  );
}

/** An argument as the kernel takes it, or the issue of a wrong kind. Bounds are not looked at. */
export function convert(
  definition: AnyDefinition,
  parameter: Parameter,
  value: Exclude<Argument, null>,
): unknown {
  if (value === undefined) return fallbackOf(parameter);
  if (parameter.kind === 'range') {
    const range = isRange(value) ? value : rangeOf(1, 1, [value]);
    return badCell(definition, parameter, range) ?? range;
  }
  if (isRange(value) || isIssue(value)) return wrongKind(definition, parameter, value);
  switch (parameter.kind) {
    case 'number': {
      if (typeof value === 'number') return value;
      const read = typeof value === 'string' && parameter.unit !== 'date' ? numberFromText(value) : undefined;
      return read ?? wrongKind(definition, parameter, value);
    }
    case 'option':
      return (
        (typeof value === 'boolean' ? undefined : wordOf(parameter, String(value))) ??
        wrongKind(definition, parameter, value)
      );
    case 'text':
      return String(value);
    case 'yes-no': {
      if (typeof value === 'boolean') return value;
      const read = typeof value === 'string' ? numberFromText(value) : value;
      return read === 0 || read === 1 ? read === 1 : wrongKind(definition, parameter, value);
    }
  }
}

function wrongKind(definition: AnyDefinition, parameter: Parameter, received: Value | Range): Issue {
  const refused =
    parameter.kind === 'option' && typeof received === 'string'
      ? parameter.refused?.[received.trim().toLowerCase()]
      : undefined;
  return issue('#VALUE!', isRange(received) ? 'many-cells' : 'wrong-kind', {
    function: definition.name,
    parameter: parameter.name,
    ...(isRange(received)
      ? { received: received.kinds.length }
      : received === null || isIssue(received)
        ? {}
        : { received }),
    expected: expectedInWords(parameter),
    ...(refused ? { remedy: refused } : {}),
  });
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
