/**
 * What a built-in function is: a record that everything else reads. How it behaves is in `records/`, what is said about it
 * (arguments, help, example) in `words/`, which load when they are asked for.
 */
import type { Measures } from '../../../functions/core/measures.ts';
import type { Argument, Outcome } from '../../../functions/core/value.ts';
import type { Aggregate } from '../plan/aggregate.ts';
import type { Choose } from '../plan/branches.ts';
import type { Junction } from '../plan/junctions.ts';
import type { PlanNode } from '../plan/plan-nodes.ts';
import type { RangeBody } from '../ranges/answer.ts';

export interface Size {
  readonly rows: number;
  readonly columns: number;
}

/** A body of ours that reads its arguments itself, for what the cell engine lacks or cannot do without cells. */
export interface Own {
  readonly minArgs: number;
  readonly maxArgs: number;
  /**
   * Arguments come raw: null for a blank, undefined where one is skipped, an Issue for an error, ranges whole. null answers
   * a blank. `name` is the one that was called.
   */
  readonly compute: (args: readonly Argument[], name: string) => Outcome | null;
  /** For functions that answer an array: how large, from the sizes of the arguments alone. */
  readonly size?: (args: readonly Size[]) => Size;
}

/** A body of ours over whole ranges, with the parameters that the cell engine gives its function of that name. */
export interface OverRanges {
  readonly run: RangeBody;
  /** Goes over one range alone; other calls are the engine's. */
  readonly oneRange?: true;
  /** Where the engine would answer an array, these arguments get one cell. */
  readonly oneCell?: (args: readonly PlanNode[]) => boolean;
}

/** What computes a function; where several could, the first that takes the arguments does. */
export interface Implementation {
  /** The formula alone tells what it means: it is replaced when the formula is read. */
  readonly language?: true;
  readonly ranges?: OverRanges;
  readonly own?: Own;
  /** Plan operators. */
  readonly operator?: (args: readonly PlanNode[]) => PlanNode;
  readonly choice?: Choose;
  readonly junction?: Junction;
  readonly aggregate?: Aggregate;
  /** The cell engine's function of that name. */
  readonly engine?: true;
  /** The engine's, for more cells than fit on its stack. */
  readonly overList?: (values: readonly unknown[]) => unknown;
}

/**
 * How a workbook file has it, by ISO/IEC 29500-1:2016, 18.17.7, where it computes the same there; null where it does not.
 * `takes` are the arguments that programs accept, since one that is not accepted can make the whole file unreadable: `v` a
 * value, `w` one that is no cell (which may be blank), `a` a value, a range or an array, `r` a reference; `?`, `+` and
 * brackets as in a regular expression.
 */
export interface Export {
  readonly takes: string;
  /** Names that files know it by, the first for those of ours that they do not; later ones than the standard's are marked `_xlfn.`. */
  readonly as: readonly string[];
  /** A text among its arguments may be a pattern there, and is none here. */
  readonly searches?: true;
  /** Written as INDEX and MATCH, which more programs have. */
  readonly asIndexMatch?: true;
}

/** A function that answers one of its arguments, or a cell of one: which may be blank. */
export type Hands =
  /** The arguments that decide are always computed, of the rest the one that is taken. */
  | { readonly decidedBy: (count: number) => readonly number[] }
  /** The first argument, the second where this test of the first holds. */
  | { readonly unless: string }
  /** A cell of a range, where these arguments are single values and these one column. */
  | {
      readonly cellFor: {
        readonly single: readonly number[] | 'all but the first';
        readonly column?: readonly number[];
      };
    };

export interface BuiltIn {
  readonly name: string;
  /** Other names of the same function. */
  readonly aliases: readonly string[];
  readonly measures: Measures;
  readonly implementation: Implementation;
  readonly export: Export | null;
  /** Another value each time it is computed: by chance, or by the clock. */
  readonly volatile?: 'random' | 'clock';
  /** Does not work through a whole column again in each row: it remembers an index, an order or a sum. */
  readonly indexed?: true;
  readonly hands?: Hands;
  /** Asks whether there is a value: an argument may be missing. */
  readonly asksForValue?: true;
}

/** Everything about a function that is not how it is called, what it measures and what a file makes of it. */
type More = Omit<BuiltIn, 'name' | 'aliases' | 'measures' | 'export'>;

/** A record from its names (its own first), what it measures, how a file has it, and the rest; without one, the cell engine computes it. */
export function builtIn(
  names: string,
  measures: Measures,
  file: Export | null,
  more: More = { implementation: { engine: true } },
): BuiltIn {
  const [name, ...aliases] = names.split(' ') as [string, ...string[]];
  return {
    name,
    aliases,
    measures,
    export: file && (file.as.length > 0 ? file : { ...file, as: [name] }),
    ...more,
  };
}

/** In a file under the record's own name, or under these. */
export const file = (takes: string, ...as: readonly string[]): Export => ({ takes, as });
/** As `file`, for what looks for something. */
export const searching = (takes: string, ...as: readonly string[]): Export => ({ takes, as, searches: true });
