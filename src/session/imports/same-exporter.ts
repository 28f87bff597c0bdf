/** How a file of the same exporter was read before: its headings and its dialect are the same. */
import type { Book } from '../../book/model.ts';
import { z } from '../../book/zod.ts';
import { recipe as settingsShape } from '../../intake/import-settings/api.ts';
import type { Choices, ColumnChoice, Findings, Recipe } from '../../intake/index.ts';

const record = z.object({
  time: z.string(),
  recipeKey: z.string(),
  reading: z.object({ delimiter: z.string(), quote: z.string(), headings: z.array(z.string()) }),
});

export interface SameExporter {
  /** Title of the import settings that it was read by. */
  readonly title: string;
  /** What was decided about reading it; where it goes is not among it. */
  readonly choices: Choices;
}

/** The latest import of a file with these headings and this dialect; null where there is none. */
export function sameExporter(book: Book, findings: Findings): SameExporter | null {
  const headings = findings.columns.map(({ heading }) => heading);
  const same = (a: readonly string[]): boolean =>
    a.length === headings.length && a.every((heading, i) => heading === headings[i]);
  const found = [...book.parts.provenance.values()]
    .flatMap((json) => record.safeParse(json).data ?? [])
    .filter(
      ({ reading }) =>
        same(reading.headings) &&
        reading.delimiter === findings.delimiter.value &&
        reading.quote === findings.quote.value,
    )
    .sort((a, b) => b.time.localeCompare(a.time))
    .flatMap(({ recipeKey }) => settingsShape.safeParse(book.parts.recipes.get(recipeKey)).data ?? [])[0];
  if (!found) return null;
  const choices = choicesOf(found, headings);
  return Object.keys(choices).length === 0 ? null : { title: found.title, choices };
}

function choicesOf({ columns, rowIsSet, read, missing }: Recipe, headings: readonly string[]): Choices {
  const chosen: Record<number, ColumnChoice> = {};
  for (const { heading, column: _column, or: _or, optional: _optional, unitsIn, ...how } of columns) {
    const index = headings.indexOf(heading);
    if (index < 0) continue;
    // A unit that the heading or the cells say is found again; one from a column of units goes by its rows.
    const { unit, ...rest } = how;
    if (Object.keys(rest).length > 0 || (unit && unitsIn === undefined))
      chosen[index] = { ...rest, ...(unit && unitsIn === undefined ? { unit } : {}) };
    const units = unitsIn === undefined ? -1 : headings.indexOf(unitsIn);
    if (units >= 0) chosen[units] = { unitsOf: [...(chosen[units]?.unitsOf ?? []), index] };
  }
  return {
    ...read,
    ...(missing ? { missing } : {}),
    ...(rowIsSet === undefined ? {} : { rowIsSet }),
    ...(Object.keys(chosen).length > 0 ? { columns: chosen } : {}),
  };
}
