import type { Argument, Outcome } from '../../../functions/core/value.ts';

export interface Size {
  readonly rows: number;
  readonly columns: number;
}

/** A built-in function that the cell engine lacks or that replaces one of its own. */
export interface Builtin {
  readonly name: string;
  readonly minArgs: number;
  readonly maxArgs: number;
  /** The arguments in words, as the formula line shows them: `value, range, [order = 0]`. */
  readonly parameters: string;
  readonly about: string;
  /** Arguments come raw: null for a blank, undefined where one is skipped, an Issue for an error, ranges whole. null answers a blank. */
  readonly compute: (args: readonly Argument[]) => Outcome | null;
  /** For functions that answer an array: how large, from the sizes of the arguments alone. */
  readonly size?: (args: readonly Size[]) => Size;
}
