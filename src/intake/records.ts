import type { Edit } from '../book/edit.ts';
import type { Sheet } from '../book/model.ts';
import { displayUnitOf } from '../units/unit.ts';
import type { Choices, Findings, Provenance, Report } from './api.ts';
import type { Inspected } from './detect/index.ts';
import { type Recipe, recipeJson, type Who } from './import-settings/index.ts';
import type { Imported } from './imported.ts';
import type { Mode, OfDiffering, Plan } from './merge/index.ts';
import type { Chosen } from './place/index.ts';

/** The recipe that this import was, for the next file of its kind. */
export function recipeOf(
  sheet: Sheet,
  chosen: Chosen,
  findings: Findings,
  { mode, key, differing }: Pick<Plan, 'mode' | 'key' | 'differing'>,
  said: readonly string[] | undefined,
  who: Who | null,
  choices: Choices = {},
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
        ...(source.unitsAt !== null && column.kind === 'number' ? unitsIn(findings, source.unitsAt) : {}),
        ...(source.unitsAt === null && column.kind === 'number' && column.dimension
          ? { unit: source.unit.value ?? displayUnitOf(column)!.unit }
          : {}),
        ...(source.dateOrder && column.kind === 'date' ? { dateOrder: source.dateOrder.value } : {}),
        ...(source.clock ? { clock: source.clock.value } : {}),
        ...how,
      })),
    rest: chosen.leftOut.length > 0 ? 'ignore' : 'match',
    mode,
    ...(said || differing?.decided === 'take' ? { key: [...key] } : {}),
    ...ofDiffering(differing?.decided),
    ...(findings.shape.value ? { shape: shapeOf(findings.shape.value) } : {}),
    ...(findings.rowIsSet?.certainty === 'sure' ? { rowIsSet: findings.rowIsSet.value } : {}),
    ...(who ? { who } : {}),
    ...readOf(choices),
  };
}

/** What was decided about the file as a whole; how many lines follow its rows is another matter each time. */
function readOf(choices: Choices): Pick<Recipe, 'read'> {
  const { encoding, delimiter, quote, preamble, headingLines, unitsLine, shortRows, decimal, dateOrder } =
    choices;
  const read = Object.fromEntries(
    Object.entries({
      ...{ encoding, delimiter, quote, preamble, headingLines, unitsLine, shortRows, decimal, dateOrder },
    }).filter(([, value]) => value !== undefined),
  );
  return Object.keys(read).length > 0 ? { read } : {};
}

const unitsIn = ({ columns }: Findings, at: number): { unitsIn?: string } => {
  const heading = columns.find(({ index }) => index === at)?.heading;
  return heading ? { unitsIn: heading } : {};
};

/** What a recipe remembers of rows that differed; taking the file's values is an update by key. */
export const ofDiffering = (decided: OfDiffering | null | undefined): { ofDiffering?: 'leave' | 'add' } =>
  decided === 'leave' || decided === 'add' ? { ofDiffering: decided } : {};

function shapeOf(shape: NonNullable<Findings['shape']['value']>): NonNullable<Recipe['shape']> {
  return shape.to === 'long' ? shape : { ...shape, by: [...shape.by], columns: undefined };
}

/** The edit that keeps the recipe in the book. */
export const recipeEdit = (imported: Imported): Edit => ({
  do: 'set-part',
  part: 'recipes',
  key: imported.recipeKey,
  value: recipeJson(imported.recipe),
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
