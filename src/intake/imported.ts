import type { Edit } from '../book/edit.ts';
import type { Findings, HeldRow, Provenance, Report, Unreadable } from './api.ts';
import type { Recipe, Who } from './import-settings/index.ts';
import type { CellChange, Differing, Mode } from './merge/index.ts';
import type { WhoReport } from './people/index.ts';
import type { Preview } from './place/index.ts';

/** Everything that came of a file. Nothing has been written: that is done by applying `edits` together. */
export interface Imported {
  readonly edits: readonly Edit[];
  readonly report: Report;
  readonly heldRows: readonly HeldRow[];
  /** Cells that could not be read, by text and reason. */
  readonly unreadable: readonly Unreadable[];
  /** Lines of rows whose values do not make sense together, the first of them. */
  readonly doubtfulLines: readonly number[];
  readonly provenance: Provenance;
  readonly findings: Findings;
  readonly preview: Preview;
  /** How to take the next file of this kind in. */
  readonly recipe: Recipe;
  readonly recipeKey: string;
  /** True when the recipe was there already. */
  readonly byRecipe: boolean;
  /** What an update would change, the first of them. */
  readonly changes: readonly CellChange[];
  /** Rows that would have been added though the sheet has them with other values. */
  readonly differing: Differing | null;
  /** How the rows come in, and by which columns they are recognised. */
  readonly mode: Mode;
  readonly key: readonly string[];
  /** Columns that the file's may be meant for; they were not taken. */
  readonly proposals: readonly {
    readonly heading: string;
    readonly column: string;
    readonly by: 'spelling' | 'content';
  }[];
  readonly who: WhoReport | null;
  /** How that was found out, to be handed in again with answers. */
  readonly whoRule: Who | null;
}
