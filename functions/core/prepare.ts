import { fallbackOf, wordOf } from './convert.ts';
import type { AnyDefinition } from './define.ts';
import { parametersFor } from './invoke.ts';
import { type Issue, isIssue } from './issue.ts';
import type { Bounds, Parameter } from './parameter.ts';
import type { Outcome } from './value.ts';

/**
 * A function laid out for a loop over columns. Place i of every array belongs to argument i.
 *
 * A row is plain when each argument that is asked to be a number is a number (or date) cell with
 * `least[i] <= value && value <= most[i]`, whole where `whole[i]` is 1 and not 0 where `notZero[i]` is 1; each option a
 * text for which `word(i, text)` answers; and each blank one not `required[i]`, for which `fallback[i]` is handed. Then
 * `call(...)` may be called at once, and a finite number, a text or a yes/no that comes out is what `invoke` answers.
 * For any other row, and for any other outcome, ask `invoke`: it finds the same and words it.
 * Ranges are never plain here: hand them to `invoke` once, or prove their checks once for the column.
 */
export interface Prepared {
  readonly definition: AnyDefinition;
  readonly parameters: readonly Parameter[];
  readonly least: Float64Array;
  readonly most: Float64Array;
  readonly whole: Uint8Array;
  readonly notZero: Uint8Array;
  readonly required: Uint8Array;
  readonly fallback: readonly unknown[];
  /** The word an option's text stands for, as the kernel takes it; undefined when it is none. Remembered. */
  word(place: number, text: string): string | undefined;
  /** The kernel, with the check of arguments that clash before it where the function has one. */
  readonly call: (...handed: never[]) => Outcome;
}

/** Prepares a function for calls of `count` arguments; the issue of a wrong count otherwise. */
export function prepare(definition: AnyDefinition, count: number): Prepared | Issue {
  const parameters = parametersFor(definition, count);
  if (isIssue(parameters)) return parameters;
  const size = parameters.length;
  const least = new Float64Array(size).fill(Number.POSITIVE_INFINITY);
  const most = new Float64Array(size).fill(Number.NEGATIVE_INFINITY);
  const whole = new Uint8Array(size);
  const notZero = new Uint8Array(size);
  const required = new Uint8Array(size);
  const words: Map<string, string | undefined>[] = [];
  for (let i = 0; i < size; i++) {
    const parameter = parameters[i]!;
    words.push(new Map());
    required[i] = parameter.optional ? 0 : 1;
    if (parameter.kind !== 'number') continue;
    least[i] = lowest(parameter.bounds);
    most[i] = highest(parameter.bounds);
    whole[i] = parameter.whole ? 1 : 0;
    notZero[i] = parameter.divisor ? 1 : 0;
  }
  const { clash, compute } = definition;
  return {
    definition,
    parameters,
    least,
    most,
    whole,
    notZero,
    required,
    fallback: parameters.map(fallbackOf),
    word(place, text) {
      const known = words[place]!;
      if (known.has(text)) return known.get(text);
      const parameter = parameters[place]!;
      const found = parameter.kind === 'option' && text !== '' ? wordOf(parameter, text) : undefined;
      // a column of free text must not grow the memory without end
      if (known.size < 1000) known.set(text, found);
      return found;
    },
    call: clash ? (...handed) => clash(...handed) ?? compute(...handed) : compute,
  };
}

const lowest = ({ min, above }: Bounds): number =>
  Math.max(min ?? -Number.MAX_VALUE, above === undefined ? -Number.MAX_VALUE : next(above, 1));
const highest = ({ max, below }: Bounds): number =>
  Math.min(max ?? Number.MAX_VALUE, below === undefined ? Number.MAX_VALUE : next(below, -1));

const float = new Float64Array(1);
const bits = new BigInt64Array(float.buffer);

/** The double next to a finite one, upward (1) or downward (−1). */
function next(value: number, way: 1 | -1): number {
  if (value === 0) return way * Number.MIN_VALUE;
  float[0] = value;
  bits[0] = bits[0]! + (value > 0 === way > 0 ? 1n : -1n);
  return float[0]!;
}
