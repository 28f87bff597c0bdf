import type { Issue } from './issue.ts';
import type { Measures } from './measures.ts';
import type { Handed, Parameter, Unit } from './parameter.ts';
import type { Constant, Source } from './source.ts';
import type { Outcome } from './value.ts';

export type Family =
  | 'segments'
  | 'ankle'
  | 'lean'
  | 'lift'
  | 'pictures'
  | 'moments'
  | 'back'
  | 'strength'
  | 'training log'
  | 'reliability'
  | 'groups'
  | 'units';

/** What comes out. `one of` lists the words of a text result. */
export interface Result {
  readonly is: 'number' | 'text' | 'column' | 'number or text';
  readonly unit: Unit;
  readonly about: string;
  readonly oneOf?: readonly string[];
  /** What it measures where that depends on the arguments, as values in any unit do; without it the unit says it. */
  readonly measures?: Measures;
}

/** A formula that the tests run; help and reference show the same. */
export interface Example {
  readonly formula: string;
  /** The result, or the error code it is known for. Numbers agree to the digits written here. */
  readonly gives: number | string | boolean | readonly (readonly number[])[];
  readonly says?: string;
}

/** One step of the working: what is computed, in words and figures. */
export interface Step {
  readonly name: string;
  readonly symbol?: string;
  readonly rule?: string;
  readonly value: number | string;
  readonly unit: Unit;
  readonly constants?: readonly Constant[];
}

/**
 * One function of the formula language, whole: engine registration, completion, help, reference page and the generic
 * tests are all made from this object.
 */
export interface Definition<P extends readonly Parameter[] = readonly Parameter[]> {
  readonly name: string;
  readonly family: Family;
  /** One sentence. */
  readonly summary: string;
  /** Words somebody may search by who does not know the name. */
  readonly searchWords?: readonly string[];
  readonly parameters: P;
  /** Trailing parameters of `parameters` that repeat as a group: how many of them. */
  readonly repeats?: number;
  readonly result: Result;
  /** The rule in plain notation. */
  readonly rule: string;
  readonly sources: readonly Source[];
  readonly constants?: readonly Constant[];
  readonly cautions?: readonly string[];
  /** Conventions and choices the user must know. */
  readonly notes?: readonly string[];
  readonly examples: readonly Example[];
  readonly seeAlso: readonly string[];
  /** Declared directions, tested: more of this parameter gives a larger (+1) or smaller (−1) result. */
  readonly directions?: Readonly<Record<string, 1 | -1>>;
  /** Arguments for which `directions` and the bound tests are run, one for each parameter (undefined = left out). */
  readonly typical: readonly unknown[];
  /**
   * What is wrong between arguments that are each right in kind (a placement that takes no bar, a name without its
   * column of names): looked at before the bounds, as a wrong word is.
   */
  readonly clash?: (...args: Handed<P>) => Issue | undefined;
  /**
   * The kernel: plain numbers, words and ranges in; a number, a word, a matrix or an issue out. Arguments are checked
   * before: it is only called with kinds and bounds kept. It never throws on purpose.
   */
  readonly compute: (...args: Handed<P>) => Outcome;
  /** The same computation told step by step, for the working of a cell. */
  readonly steps?: (...args: Handed<P>) => readonly Step[];
}

/** A definition with its parameter types forgotten, as the registry and the evaluators hold it. */
export type AnyDefinition = Omit<Definition, 'compute' | 'steps' | 'clash'> & {
  readonly clash?: (...args: never[]) => Issue | undefined;
  readonly compute: (...args: never[]) => Outcome;
  readonly steps?: (...args: never[]) => readonly Step[];
};

export function defineFunction<const P extends readonly Parameter[]>(
  definition: Definition<P>,
): AnyDefinition {
  return definition as unknown as AnyDefinition;
}
