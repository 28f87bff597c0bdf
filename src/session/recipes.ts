import type { Edit } from '../book/edit.ts';
import type { Book, Json } from '../book/model.ts';
import { nameKey } from '../book/names.ts';
import { type Recipe, recipeJson, recipe as recipeShape } from '../intake/recipe-shape.ts';

/** The edits that give a renamed sheet, or a renamed column of a sheet, its new name in the import recipes. */
export function renamedInRecipes(
  book: Book,
  from: { readonly sheet: string; readonly column?: string },
  to: string,
): readonly Edit[] {
  const edits: Edit[] = [];
  for (const [key, value] of book.parts.recipes) {
    const recipe = readable(value);
    if (!recipe || nameKey(recipe.sheet) !== nameKey(from.sheet)) continue;
    const same = (column: string): boolean =>
      from.column !== undefined && nameKey(column) === nameKey(from.column);
    const renamed =
      from.column === undefined
        ? { ...recipe, sheet: to }
        : {
            ...recipe,
            columns: recipe.columns.map((c) => (same(c.column) ? { ...c, column: to } : c)),
            ...(recipe.key ? { key: recipe.key.map((c) => (same(c) ? to : c)) } : {}),
          };
    edits.push({ do: 'set-part', part: 'recipes', key, value: recipeJson(renamed) });
  }
  return edits;
}

/** A recipe that cannot be read is left as it is; its owner says what is wrong with it when it is used. */
function readable(value: Json): Recipe | undefined {
  return recipeShape.safeParse(value).data;
}
