import { sheetOf } from '../book/book.ts';
import type { Edit } from '../book/edit.ts';
import type { Book, Json, Sheet } from '../book/model.ts';
import { nameKey } from '../book/names.ts';
import {
  type IntakeOptions,
  inspecting,
  type Progress,
  type Recipe,
  readRecipe,
  recipeEdit,
  recipeFits,
  sentence,
  type Taken,
  type TakeOptions,
  takingIn,
} from '../intake/index.ts';
import { plausibility } from './plausibility.ts';

/** A file that is about to come into a sheet. */
export interface Incoming extends Pick<TakeOptions, 'mode' | 'key' | 'rest' | 'choices' | 'largest'> {
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

/** Share of a recipe's headings from which a file counts as meant for it, so that a missing one is told instead of guessed over. */
const MEANT = 0.5;

/** Reads a file for a sheet, by recipe or by its headings. @throws IntakeRefusal */
export function* preparing(book: Book, incoming: Incoming): Generator<Progress, Prepared> {
  const { bytes, name, now, reserved } = incoming;
  const sheet = incoming.sheet === null ? null : sheetOf(book, incoming.sheet);
  const options: IntakeOptions = {
    name,
    now,
    reserved,
    plausibility: plausibility(),
    ...(incoming.choices ? { choices: incoming.choices } : {}),
    ...(incoming.largest === undefined ? {} : { largest: incoming.largest }),
  };
  const recipe = incoming.recipe
    ? readRecipe(book.parts.recipes.get(incoming.recipe), incoming.recipe)
    : sheet && (yield* fittingRecipe(book, sheet, bytes, options));
  const taken = yield* takingIn(
    bytes,
    { sheet, book },
    {
      ...options,
      ...(recipe ? { recipe } : {}),
      ...(incoming.mode ? { mode: incoming.mode } : {}),
      ...(incoming.key ? { key: incoming.key } : {}),
      ...(incoming.rest ? { rest: incoming.rest } : {}),
    },
  );
  const edits = [...taken.edits, ...(recipe ? [] : [recipeEdit(taken)]), provenanceEdit(book, taken)];
  return { taken, edit: { do: 'batch', edits }, words: `Bring in ${name}` };
}

/** The sheet's recipe whose headings the file has, or most of them. */
function* fittingRecipe(
  book: Book,
  sheet: Sheet,
  bytes: Uint8Array,
  options: IntakeOptions,
): Generator<Progress, Recipe | null> {
  const recipes = [...book.parts.recipes]
    .map(([key, json]) => readRecipe(json, key))
    .filter((recipe) => nameKey(recipe.sheet) === nameKey(sheet.name));
  if (recipes.length === 0) return null;
  const findings = yield* inspecting(bytes, options);
  const headings = findings.columns.map((column) => column.heading);
  const [best] = recipes
    .map((recipe) => ({ recipe, fits: recipeFits(recipe, headings) }))
    .sort((a, b) => b.fits - a.fits);
  return best && best.fits >= MEANT ? best.recipe : null;
}

/** What is kept of an import: the counts, where from, and every row that could not be placed, as it came. */
function provenanceEdit(book: Book, taken: Taken): Edit {
  const heldRows = taken.heldRows.map(({ line, raw, reason }) => ({ line, raw, reason: sentence(reason) }));
  const apart = taken.report.apart.map(({ line, raw, as }) => ({ line, raw, as }));
  const value: Json = {
    ...taken.provenance,
    rows: { ...taken.provenance.rows },
    cells: { ...taken.provenance.cells },
    heldRows,
    apart,
  };
  let n = book.parts.provenance.size + 1;
  while (book.parts.provenance.has(`import_${n}`)) n++;
  return { do: 'set-part', part: 'provenance', key: `import_${n}`, value };
}
