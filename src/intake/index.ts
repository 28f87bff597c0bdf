import type { Findings, IntakeOptions, Progress, Target } from './api.ts';
import { inspecting as inspectingAll } from './detect/inspect.ts';
import { importing } from './import-file.ts';
import type { Imported } from './imported.ts';
import type { ImportOptions } from './options.ts';

/** Runs a task to its end at once. */
function finish<T>(task: Generator<Progress, T>): T {
  for (;;) {
    const step = task.next();
    if (step.done) return step.value;
  }
}

/** Looks at a file, step by step. Nothing is written. @throws IntakeRefusal */
export function* inspecting(bytes: Uint8Array, options: IntakeOptions = {}): Generator<Progress, Findings> {
  return (yield* inspectingAll(bytes, options)).findings;
}

/** Looks at a file at once. @throws IntakeRefusal */
export const inspect = (bytes: Uint8Array, options: IntakeOptions = {}): Findings =>
  finish(inspecting(bytes, options));

/** Brings a file's rows to a sheet, as edits, at once. @throws IntakeRefusal */
export const importFile = (bytes: Uint8Array, target: Target, options: ImportOptions = {}): Imported =>
  finish(importing(bytes, target, options));

export type * from './api.ts';
export { importing } from './import-file.ts';
export { provenanceJson, type Recipe, readRecipe, recipeJson } from './import-settings/recipe.ts';
export type { Who } from './import-settings/recipe-shape.ts';
export type { Imported } from './imported.ts';
export { type Differing, differencesInWords, type OfDiffering } from './merge/differing.ts';
export type { CellChange, Mode } from './merge/plan.ts';
export { mendedRows } from './merge/release.ts';
export type { ImportOptions } from './options.ts';
export type { WhoReport } from './people/who.ts';
export { recipeCovers, recipeFits } from './place/map.ts';
export type { Preview, PreviewRow } from './place/preview.ts';
export { hashOfSoon } from './read/hash.ts';
export { prepare, preparing } from './read/prepare.ts';
export type { Prepared, PrepareOptions } from './read/prepared.ts';
export { ofDiffering, recipeEdit } from './records.ts';
export { IntakeRefusal, type Note, sentence } from './sentences.ts';
