import { sheetOf } from '../book/book.ts';
import type { Edit } from '../book/edit.ts';
import type { Book, Json, Sheet } from '../book/model.ts';
import { nameKey } from '../book/names.ts';
import {
  type Progress,
  provenanceJson,
  type Recipe,
  readRecipe,
  recipeEdit,
  sentence,
  type Taken,
  type TakeOptions,
  takingIn,
} from '../intake/index.ts';
import { plausibility } from './plausibility.ts';

/** What the caller may decide about a file; the rest is found out. */
type Decisions = Pick<
  TakeOptions,
  'mode' | 'key' | 'rest' | 'choices' | 'who' | 'synonyms' | 'largest' | 'hash' | 'size' | 'workbook'
>;

/** A file that is about to come into a sheet. A workbook is opened before (`preparing` of the intake). */
export interface Incoming extends Decisions {
  readonly bytes: Uint8Array;
  readonly name: string;
  /** Id of the sheet; null makes a new one. */
  readonly sheet: string | null;
  /** When, ISO 8601. */
  readonly now: string;
  /** Key of the recipe to use; left out, the sheet's recipe that fits the headings, else matching headings. */
  readonly recipe?: string;
  readonly reserved: (name: string) => boolean;
}

/** What came of a file, ready to be written as one edit; nothing is written yet. */
export interface Prepared {
  readonly taken: Taken;
  readonly edit: Edit;
  readonly words: string;
}

/** Reads a file for a sheet, by recipe or by its headings. @throws IntakeRefusal */
export function* preparing(book: Book, incoming: Incoming): Generator<Progress, Prepared> {
  const { bytes, sheet: id, recipe: key, ...options } = incoming;
  const sheet = id === null ? null : sheetOf(book, id);
  const recipes = key
    ? { recipe: readRecipe(book.parts.recipes.get(key), key) }
    : { recipes: sheet ? recipesOf(book, sheet) : [] };
  const taken = yield* takingIn(
    bytes,
    { sheet, book },
    { ...options, ...recipes, plausibility: plausibility() },
  );
  const edits = [...taken.edits, ...(taken.byRecipe ? [] : [recipeEdit(taken)]), provenanceEdit(book, taken)];
  return { taken, edit: { do: 'batch', edits }, words: `Bring in ${incoming.name}` };
}

/** The recipes that bring files into a sheet; the intake picks the one whose headings the file has. */
const recipesOf = (book: Book, sheet: Sheet): { readonly key: string; readonly recipe: Recipe }[] =>
  [...book.parts.recipes]
    .map(([key, json]) => ({ key, recipe: readRecipe(json, key) }))
    .filter(({ recipe }) => nameKey(recipe.sheet) === nameKey(sheet.name));

/** What is kept of an import: the counts, where from, and every row that could not be placed, as it came. */
function provenanceEdit(book: Book, taken: Taken): Edit {
  const heldRows = taken.heldRows.map(({ line, raw, reason }) => ({ line, raw, reason: sentence(reason) }));
  const apart = taken.report.apart.map(({ line, raw, as }) => ({ line, raw, as }));
  const value: Json = {
    ...provenanceJson(taken.provenance),
    heldRows,
    apart,
  };
  let n = book.parts.provenance.size + 1;
  while (book.parts.provenance.has(`import_${n}`)) n++;
  return { do: 'set-part', part: 'provenance', key: `import_${n}`, value };
}
