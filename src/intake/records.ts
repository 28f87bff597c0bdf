import type { Edit } from '../book/edit.ts';
import type { Sheet } from '../book/model.ts';
import { displayUnitOf } from '../units/unit.ts';
import type { Findings, Provenance, Report } from './api.ts';
import type { Chosen } from './choose.ts';
import type { Inspected } from './inspect.ts';
import type { Who } from './options.ts';
import type { Mode } from './plan.ts';
import { type Recipe, recipeJson } from './recipe.ts';
import type { Taken } from './taken.ts';

/** The recipe that this import was, for the next file of its kind. */
export function recipeOf(
  sheet: Sheet,
  chosen: Chosen,
  findings: Findings,
  mode: Mode,
  key: readonly string[] | undefined,
  who: Who | null,
): Recipe {
  return {
    version: 1,
    title: `${sheet.label}: ${findings.name || 'pasted'}`.slice(0, 200),
    sheet: sheet.name,
    columns: chosen.matches
      .filter((m) => m.source.heading !== '')
      .map(({ source, column, how }) => ({
        heading: source.heading,
        column: column.name,
        ...(column.kind === 'number' && column.dimension
          ? { unit: source.unit.value ?? displayUnitOf(column)!.unit }
          : {}),
        ...(source.dateOrder && column.kind === 'date' ? { dateOrder: source.dateOrder.value } : {}),
        ...(source.clock ? { clock: source.clock.value } : {}),
        ...how,
      })),
    rest: chosen.leftOut.length > 0 ? 'ignore' : 'match',
    mode,
    ...(key ? { key: [...key] } : {}),
    ...(findings.shape.value ? { shape: shapeOf(findings.shape.value) } : {}),
    ...(who ? { who } : {}),
  };
}

function shapeOf(shape: NonNullable<Findings['shape']['value']>): NonNullable<Recipe['shape']> {
  return shape.to === 'long' ? shape : { ...shape, by: [...shape.by], columns: undefined };
}

/** The edit that keeps the recipe in the book. */
export const recipeEdit = (taken: Taken): Edit => ({
  do: 'set-part',
  part: 'recipes',
  key: taken.recipeKey,
  value: recipeJson(taken.recipe),
});

/** What is kept with the book about the file. */
export function provenanceOf(
  { findings, layout }: Inspected,
  sheet: Sheet,
  recipe: Recipe,
  byRecipe: boolean,
  mode: Mode,
  time: string,
  report: Report,
): Provenance {
  return {
    file: findings.name,
    size: findings.size,
    hash: findings.hash,
    time,
    sheet: sheet.name,
    recipe: byRecipe ? recipe.title : null,
    mode,
    rows: report.rows,
    cells: report.cells,
    reading: {
      delimiter: findings.delimiter.value,
      quote: findings.quote.value,
      headings: layout.headings,
      shape: findings.shape.value,
    },
  };
}
