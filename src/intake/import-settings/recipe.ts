/** Import settings as they are in a book, read and written. */
import type { Provenance } from '../api.ts';
import { IntakeRefusal } from '../sentences/index.ts';
import { asJson, type JsonRecord, type Recipe, recipe } from './recipe-shape.ts';

export { type Recipe, type RecipeColumn, recipe, recipeColumn, recipeJson } from './recipe-shape.ts';

/**
 * A recipe from the book's parts.
 * @throws IntakeRefusal when its shape is wrong
 */
export function readRecipe(json: unknown, key = ''): Recipe {
  const parsed = recipe.safeParse(json);
  if (parsed.success) return parsed.data;
  const first = parsed.error.issues[0]!;
  const at = first.path.length > 0 ? ` at ${first.path.join('.')}` : '';
  throw new IntakeRefusal('recipe-broken', { recipe: key, problem: `${first.message}${at}` });
}

export const provenanceJson = (p: Provenance): JsonRecord => asJson(p);
