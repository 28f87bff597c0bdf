import { sheetOf } from '../../book/book.ts';
import type { Edit } from '../../book/edit.ts';
import type { Book, Json, Sheet } from '../../book/model.ts';
import { nameKey } from '../../book/names.ts';
import { isFunctionName } from '../../calc/index.ts';
import {
  type Imported,
  type ImportOptions,
  importing,
  ofDiffering as learned,
  type Progress,
  provenanceJson,
  type Recipe,
  readRecipe,
  recipeEdit,
  recipeFits,
  sentence,
} from '../../intake/index.ts';
import { plausibility } from '../checks/plausibility.ts';

/** What the caller may decide about a file; the rest is found out. */
type Decisions = Pick<
  ImportOptions,
  | 'mode'
  | 'key'
  | 'ofDiffering'
  | 'rest'
  | 'choices'
  | 'who'
  | 'synonyms'
  | 'largest'
  | 'hash'
  | 'size'
  | 'workbook'
>;

/** A file that is about to come into a sheet. A workbook is opened before (`preparing` of the intake). */
export interface Incoming extends Decisions {
  readonly bytes: Uint8Array;
  readonly name: string;
  /** Id of the sheet; null makes a new one. */
  readonly sheet: string | null;
  /** When, ISO 8601. */
  readonly now: string;
  /** Key of the recipe to use; null for none; left out, the sheet's recipe that fits the headings, else matching headings. */
  readonly recipe?: string | null;
  /** People that the roster lacks and gets with the rows. */
  readonly newPeople?: readonly string[];
}

/** What came of a file, ready to be written as one edit; nothing is written yet. */
export interface Prepared {
  readonly imported: Imported;
  readonly edit: Edit;
  readonly words: string;
}

/** The open book that a file comes into: a session. */
interface Holder {
  readonly current: Book;
}

/** Names that no new column may have. */
export const reservedIn =
  (book: Book) =>
  (name: string): boolean =>
    isFunctionName(name) || book.names.has(nameKey(name));

/**
 * Reads a file for a sheet of an open book, by recipe or by its headings, step by step; nothing is written before
 * `session.writePlanned`.
 * @throws IntakeRefusal
 */
export function* preparing({ current: book }: Holder, incoming: Incoming): Generator<Progress, Prepared> {
  const { bytes, sheet: id, recipe: key, newPeople = [], ...options } = incoming;
  const sheet = id === null ? null : sheetOf(book, id);
  const recipes =
    typeof key === 'string'
      ? { recipe: readRecipe(book.parts.recipes.get(key), key) }
      : { recipes: sheet && key !== null ? recipesOf(book, sheet) : [] };
  const imported = yield* importing(
    bytes,
    { sheet, book },
    { ...options, ...recipes, plausibility: plausibility(), reserved: reservedIn(book) },
  );
  const recipeKey =
    key ?? (key === null && sheet ? replaced(book, sheet, imported) : undefined) ?? imported.recipeKey;
  const edits = [
    ...imported.edits,
    ...rosterEdits(book, imported, newPeople),
    ...recipeEdits(imported, recipeKey, incoming),
    provenanceEdit(book, imported, recipeKey),
  ];
  return { imported, edit: { do: 'batch', edits }, words: `Import ${incoming.name}` };
}

/** The recipes that bring files into a sheet; the intake picks the one whose headings the file has. */
const recipesOf = (book: Book, sheet: Sheet): { readonly key: string; readonly recipe: Recipe }[] =>
  [...book.parts.recipes]
    .map(([key, json]) => ({ key, recipe: readRecipe(json, key) }))
    .filter(({ recipe }) => nameKey(recipe.sheet) === nameKey(sheet.name));

/** The recipe that a file was read without though it fits: the new one takes its place, or both would fit the next file. */
function replaced(book: Book, sheet: Sheet, { findings }: Imported): string | undefined {
  const headings = findings.columns.map(({ heading }) => heading);
  return recipesOf(book, sheet).find(({ recipe }) => recipeFits(recipe, headings) === 1)?.key;
}

/** A new recipe is kept; one that was there already, when it learned something: who is meant, how rows are recognised. */
function recipeEdits(
  imported: Imported,
  recipeKey: string,
  { who, mode, key, ofDiffering }: Decisions,
): Edit[] {
  if (!imported.byRecipe) return [recipeEdit({ ...imported, recipeKey })];
  const decided = ofDiffering ? (imported.differing?.decided ?? undefined) : undefined;
  if (!who && !mode && !key && !decided) return [];
  const recipe: Recipe = {
    ...imported.recipe,
    ...(who ? { who } : {}),
    ...(mode ? { mode } : {}),
    ...(key ? { key: [...key] } : {}),
    ...(decided === 'take' ? { mode: 'update' as const, key: [...imported.key] } : learned(decided)),
  };
  return [recipeEdit({ ...imported, recipeKey, recipe })];
}

/** Rows for people whom the roster does not list yet. */
function rosterEdits(book: Book, { whoRule }: Imported, people: readonly string[]): Edit[] {
  const roster = book.sheets.find(({ name }) => whoRule && nameKey(name) === nameKey(whoRule.roster));
  if (!roster || !whoRule || people.length === 0) return [];
  const cells = roster.columns.map(({ name }) => (nameKey(name) === nameKey(whoRule.name) ? people : []));
  return [{ do: 'add-rows', sheet: roster.id, row: roster.rows, count: people.length, cells }];
}

/** What is kept of an import: the counts, where from, and every row that could not be placed, as it came. */
function provenanceEdit(book: Book, imported: Imported, recipeKey: string): Edit {
  const heldRows = imported.heldRows.map(({ line, raw, reason }) => ({
    line,
    raw,
    reason: sentence(reason),
  }));
  const apart = imported.report.apart.map(({ line, raw, as }) => ({ line, raw, as }));
  const value: Json = {
    ...provenanceJson(imported.provenance),
    recipeKey,
    heldRows,
    apart,
  };
  let n = book.parts.provenance.size + 1;
  while (book.parts.provenance.has(`import_${n}`)) n++;
  return { do: 'set-part', part: 'provenance', key: `import_${n}`, value };
}
