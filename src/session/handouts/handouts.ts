import { columnNamed } from '../../book/book.ts';
import type { Book, Sheet } from '../../book/model.ts';
import { nameKey } from '../../book/names.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import { escaped, type Shape, shapeText } from '../drawing/shape.ts';
import type { Viewed } from '../views.ts';
import { type Handout, handoutOf, recipeFor } from './handout.ts';
import { handoutPage } from './page.ts';
import { handoutSettingsOf, type Paper } from './settings.ts';
import { handoutStyle } from './style.ts';

/** For whom handouts are asked: a sheet by id or name, some of its rows or all of them. */
export const handoutRequest = z.strictObject({
  sheet: z.string().optional(),
  rows: z.array(z.int().min(0)).max(100_000).optional(),
});
export type HandoutRequest = z.infer<typeof handoutRequest>;

export interface Handouts {
  readonly title: string;
  readonly sheet: string;
  readonly handouts: readonly Handout[];
  /** Rules that cannot be used, a sentence each. */
  readonly notes: readonly string[];
}

/** The handouts of a sheet's athletes; rows without a name are left out. @throws Refusal */
export function handoutsOf(viewed: Viewed, { sheet: wanted, rows }: HandoutRequest = {}): Handouts {
  const settings = handoutSettingsOf(viewed.book);
  const sheet = sheetFor(viewed.book, wanted ?? settings.sheet);
  if (sheet.columns.length === 0) refuse(`The sheet ${sheet.label} has no columns to make handouts from.`);
  const recipe = recipeFor(viewed, sheet, settings);
  const beyond = rows?.find((row) => row >= sheet.rows);
  if (beyond !== undefined)
    refuse(`The sheet ${sheet.label} has ${sheet.rows} rows; row ${beyond + 1} was asked for.`);
  const all = rows ?? Array.from({ length: sheet.rows }, (_, row) => row);
  const named = all.filter((row) => isFilled(viewed, sheet, row));
  if (named.length === 0) refuse(`The sheet ${sheet.label} has no athletes to make handouts for.`);
  return {
    title: viewed.book.title,
    sheet: sheet.id,
    handouts: named.map((row) => handoutOf(viewed, recipe, row)),
    notes: recipe.notes,
  };
}

function sheetFor(book: Book, wanted: string | undefined): Sheet {
  if (wanted !== undefined) {
    const found = book.sheets.find(({ id, name }) => id === wanted || nameKey(name) === nameKey(wanted));
    return (
      found ??
      refuse(
        `There is no sheet "${wanted}" to make handouts from. The book has: ${book.sheets.map(({ name }) => name).join(', ') || 'none'}.`,
      )
    );
  }
  const measured = book.sheets.find((sheet) =>
    ['femur', 'tibia', 'trunk'].every((name) => columnNamed(sheet, name)),
  );
  return (
    measured ??
    refuse(
      'No sheet of this book has the columns femur, tibia and trunk that handouts are made from. Name the sheet to use.',
    )
  );
}

const isFilled = ({ calculation }: Viewed, sheet: Sheet, row: number): boolean =>
  sheet.columns
    .filter(({ formula }) => formula === undefined)
    .some(({ id }) => {
      const value = calculation.value(sheet.id, id, row);
      return value !== null && value !== '';
    });

/** The pages as plain records, for a page that shows them. */
export const handoutShapes = ({ handouts }: Handouts): readonly Shape[] =>
  handouts.map((handout, index) => handoutPage(handout, `h${index}-`));

/** What a handout's document may load: nothing. Its only style is its own. */
const policy = "default-src 'none'; style-src 'unsafe-inline'";

/** A document of its own with these handouts: no script, nothing loaded from elsewhere. */
export function handoutDocument(made: Handouts, paper: Paper): string {
  const title = made.handouts.length === 1 ? `${made.handouts[0]!.athlete} · ${made.title}` : made.title;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}</title>
<style>
body{margin:0}
@media screen{body{display:grid;justify-content:center;gap:8mm;padding:8mm;background:#e4e2da}.handout{padding:8mm;box-sizing:content-box!important}}
${handoutStyle(paper)}</style>
</head>
<body>
${handoutShapes(made).map(shapeText).join('\n')}
</body>
</html>
`;
}
