/** What can be decided about an import. */
import type { IntakeOptions } from './api.ts';
import type { Recipe, Who } from './import-settings/index.ts';
import type { Mode, OfDiffering } from './merge/index.ts';

export interface ImportOptions extends IntakeOptions {
  /** The recipe to go by. */
  readonly recipe?: Recipe;
  /** Recipes to choose from by the file's headings, when none is given. */
  readonly recipes?: readonly { readonly key: string; readonly recipe: Recipe }[];
  /** What becomes of rows that stand in the sheet: the recipe's mode, else append. */
  readonly mode?: Mode;
  readonly key?: readonly string[];
  /** What becomes of rows that the sheet has with other values, when rows are appended: the recipe's, else it is asked. */
  readonly ofDiffering?: OfDiffering;
  /** Headings that match no column: left out, or made new columns (the default). */
  readonly rest?: 'ignore' | 'add';
  /** Whose rows these are; null asks nobody. Left out, the recipe's, or what the book suggests. */
  readonly who?: Who | null;
  /** Further lines of words that mean the same, before the trade's own. */
  readonly synonyms?: readonly (readonly string[])[];
}
