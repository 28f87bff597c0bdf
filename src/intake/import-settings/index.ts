/** Import settings: how the next file of a kind is to be read, and what of the book they point at. */
export { provenanceJson, type Recipe, type RecipeColumn, readRecipe, recipeJson } from './recipe.ts';
export { recipe, type Who } from './recipe-shape.ts';
