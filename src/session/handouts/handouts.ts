import type { Book, Sheet } from '../../book/model.ts';
import { nameKey } from '../../book/names.ts';
import { goneName } from '../../book/references/gone.ts';
import { refuse } from '../../book/refusal.ts';
import { measuredSheet } from '../../book/roles/column-in-role.ts';
import { z } from '../../book/zod.ts';
import { lifterPlace } from '../figure/lifter-place.ts';
import type { ReadContext } from '../open-book.ts';
import { type Handout, handoutOf, recipeFor } from './handout.ts';
import { type HandoutRule, type HandoutSettings, handoutSettingsOf } from './handout-settings.ts';
import { openNotes } from './open-notes.ts';
import { usualRulesFor } from './usual-rules.ts';

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
  /** What the coach should know before printing: sentences that could not be decided, for whom and why. */
  readonly notes: readonly string[];
  /** What the book says of its handouts, and the rules that hold where it names none. */
  readonly settings: HandoutSettings;
  readonly usualRules: readonly HandoutRule[];
}

/** The handouts of a sheet's athletes; rows without a name are left out. @throws Refusal */
export function handoutsOf(context: ReadContext, request: HandoutRequest = {}): Handouts {
  const asked = handoutRequest.parse(request);
  const settings = handoutSettingsOf(context.book);
  const { sheet, rows } = whereMeasured(
    context,
    sheetFor(context.book, asked.sheet ?? settings.sheet),
    asked.rows,
  );
  if (sheet.columns.length === 0) refuse(`The sheet ${sheet.label} has no columns to make handouts from.`);
  const recipe = recipeFor(context, sheet, settings);
  const beyond = rows?.find((row) => row >= sheet.rows);
  if (beyond !== undefined)
    refuse(`The sheet ${sheet.label} has ${sheet.rows} rows; row ${beyond + 1} was asked for.`);
  const all = rows ?? Array.from({ length: sheet.rows }, (_, row) => row);
  const named = all.filter((row) => isFilled(context, sheet, row));
  if (named.length === 0) refuse(`The sheet ${sheet.label} has no athletes to make handouts for.`);
  const handouts = named.map((row) => handoutOf(context, recipe, row));
  return {
    title: context.book.title,
    sheet: sheet.id,
    handouts,
    notes: openNotes(handouts),
    settings,
    usualRules: usualRulesFor(context.book, sheet),
  };
}

/** Rows of a log or another test ask for the pages of their athletes: those of the sheet that has their build. */
function whereMeasured(
  context: ReadContext,
  sheet: Sheet,
  rows: readonly number[] | undefined,
): { sheet: Sheet; rows: readonly number[] | undefined } {
  const places = rows?.filter((row) => row < sheet.rows).map((row) => lifterPlace(context, sheet, row)) ?? [];
  const first = places.find((place) => place !== null);
  if (!first || first.sheet.id === sheet.id) return { sheet, rows };
  const found = places.flatMap((place) => (place?.sheet.id === first.sheet.id ? [place.row] : []));
  return { sheet: first.sheet, rows: [...new Set(found)] };
}

function sheetFor(book: Book, wanted: string | undefined): Sheet {
  if (wanted !== undefined) {
    const found = book.sheets.find(({ id, name }) => id === wanted || nameKey(name) === nameKey(wanted));
    return (
      found ??
      refuse(
        `There is no sheet "${goneName(wanted)}" to make handouts from. The book has: ${book.sheets.map(({ name }) => name).join(', ') || 'none'}.`,
      )
    );
  }
  return (
    measuredSheet(book.sheets) ??
    refuse(
      'No sheet of this book has the columns femur, tibia and trunk that handouts are made from. Name the sheet to use.',
    )
  );
}

const isFilled = ({ calculation }: ReadContext, sheet: Sheet, row: number): boolean =>
  sheet.columns
    .filter(({ formula }) => formula === undefined)
    .some(({ id }) => {
      const value = calculation.value(sheet.id, id, row);
      return value !== null && value !== '';
    });
