import type { Findings, IntakeOptions, Progress, Target } from './api.ts';
import { inspecting as inspectingAll } from './detect/index.ts';
import { importing } from './import-file.ts';
import type { Imported } from './imported.ts';
import type { ImportOptions } from './options.ts';

/** Looks at a file, step by step. Nothing is written. @throws IntakeRefusal */
export function* inspecting(bytes: Uint8Array, options: IntakeOptions = {}): Generator<Progress, Findings> {
  return (yield* inspectingAll(bytes, options)).findings;
}

export type * from './api.ts';
export { importing } from './import-file.ts';
export { provenanceJson, type Recipe, readRecipe, recipeJson, type Who } from './import-settings/index.ts';
export type { Imported } from './imported.ts';
export {
  type CellChange,
  type Differing,
  differencesInWords,
  type Mode,
  mendedRows,
  type OfDiffering,
} from './merge/index.ts';
export type { ImportOptions } from './options.ts';
export type { WhoReport } from './people/index.ts';
export { type Preview, type PreviewRow, recipeCovers, recipeFits } from './place/index.ts';
export { hashOfSoon, type Prepared, type PrepareOptions, prepare, preparing } from './read/index.ts';
export { ofDiffering, recipeEdit } from './records.ts';
export { IntakeRefusal, type Note, sentence } from './sentences/index.ts';
