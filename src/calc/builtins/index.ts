import type { Argument, Outcome } from '../../../functions/core/value.ts';

/** A built-in function that the cell engine lacks or that replaces one of its own. */
export interface Builtin {
  readonly name: string;
  readonly minArgs: number;
  readonly maxArgs: number;
  readonly about: string;
  /** Arguments come raw: null for a blank, undefined where one is skipped, an Issue for an error, ranges whole. */
  readonly compute: (args: readonly Argument[]) => Outcome;
}

export const builtins: ReadonlyMap<string, Builtin> = new Map();
