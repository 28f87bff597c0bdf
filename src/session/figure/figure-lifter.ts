import { invoke } from '../../../functions/core/invoke.ts';
import type { Argument } from '../../../functions/core/value.ts';
import type { BarRulePlacement } from '../../../functions/posture/balance.ts';
import type { Lifter } from '../../../functions/posture/figure.ts';
import { registry } from '../../../functions/registry.ts';
import { columnNamed } from '../../book/book.ts';
import type { Book, Column, Sheet } from '../../book/model.ts';
import { nameKey } from '../../book/names.ts';
import { goneName } from '../../book/references/gone.ts';
import { definePart, type References } from '../../book/references/part.ts';
import { cellInRole } from '../../book/roles/cell-in-role.ts';
import { columnInRole } from '../../book/roles/column-in-role.ts';
import { dayColumn } from '../../book/roles/day-column.ts';
import { z } from '../../book/zod.ts';
import { athleteIn } from '../athlete-in.ts';
import type { ReadContext } from '../open-book.ts';
import { displayOf } from '../text/display.ts';

/** What can be tried out in the figure without touching the data. Lengths cm, angles deg, masses kg. */
export const figureOptions = z.strictObject({
  lift: z.number().optional(),
  depth: z.number().optional(),
  ankle: z.number().optional(),
  stance: z.number().optional(),
  placement: z.string().optional(),
  bar: z.number().optional(),
  mass: z.number().optional(),
  /** Row of the same sheet whose lifter is drawn beside this one. */
  beside: z.number().int().min(0).optional(),
  /** Row of another sheet in which this lifter was tested again, drawn beside this row. */
  test: z.strictObject({ sheet: z.string(), row: z.number().int().min(0) }).optional(),
});
export type FigureOptions = z.infer<typeof figureOptions>;

export const NEEDED = ['femur', 'tibia', 'trunk', 'ankle'] as const;
const MEASURES = [
  ...NEEDED,
  'foot',
  'lift',
  'placement',
  'stance',
  'mass',
  'bar',
  'stature',
  'depth',
] as const;
export type Measure = (typeof MEASURES)[number];
export type Origin = 'row' | 'setting' | 'changed here' | 'default';

/** What is known of a lifter, and where each figure comes from. */
export interface Known {
  readonly title: string;
  readonly sheet: Sheet;
  readonly row: number;
  value(measure: Measure): Argument;
  number(measure: Measure): number | undefined;
  origin(measure: Measure): Origin;
  readonly missing: readonly string[];
}

const settingSchema = z.looseObject({ columns: z.record(z.string(), z.string()).optional() });

/** The figure's setting names columns of whichever sheet has them, and named cells. */
export const figurePart = definePart({
  word: 'figure',
  part: 'settings',
  key: 'figure',
  schema: settingSchema,
  references: (setting, visit) =>
    setting.columns
      ? {
          ...setting,
          columns: Object.fromEntries(
            Object.entries(setting.columns).map(([measure, name]) => [measure, chosenAfter(name, visit)]),
          ),
        }
      : setting,
});

/** Where another sheet or a cell goes on under the name, it stays: a renamed column is known by its role then. */
function chosenAfter(name: string, { book, columns, names }: References): string {
  const homes = book.sheets.filter((sheet) => columnNamed(sheet, name));
  const after = homes.map(({ id }) => columns.named(id, name));
  if (book.names.has(nameKey(name))) return homes.length === 0 ? names(name) : name;
  return after.every((one) => one !== name) ? (after[0] ?? name) : name;
}

/** Which columns and named cells the book's setting names for the measures. */
export function chosenColumns(book: Book): Readonly<Record<string, string>> {
  const setting = settingSchema.safeParse(book.parts.settings.get('figure'));
  return (setting.success && setting.data.columns) || {};
}

/** The measure that a column goes on being for, though the setting keeps naming others of its name. */
export function chosenRole(book: Book, name: string): string | undefined {
  const homes = book.sheets.filter((sheet) => columnNamed(sheet, name));
  if (homes.length < 2) return undefined;
  return Object.entries(chosenColumns(book)).find(([, chosen]) => nameKey(chosen) === nameKey(name))?.[0];
}

/** The column for a measure: the one that the setting names, else the one in its role or of its name. */
export function columnFor(
  sheet: Sheet,
  measure: string,
  chosen: Readonly<Record<string, string>>,
): Column | undefined {
  const own = Object.hasOwn(chosen, measure) ? chosen[measure]! : undefined;
  if (own === undefined) return columnInRole(sheet, measure);
  return columnNamed(sheet, own) ?? sheet.columns.find(({ role }) => role === measure);
}

/**
 * The lifter of a row. A measure comes from what is tried out, from the column of its name or the one that the book's
 * setting `figure` names, or for set-up from a named cell (the setting may name one for the lengths too).
 */
export function knownOf(context: ReadContext, sheet: Sheet, row: number, given: FigureOptions): Known {
  const chosen = chosenColumns(context.book);
  const values = new Map<Measure, readonly [Argument, Origin]>();
  for (const measure of MEASURES) {
    const tried = (given as Partial<Record<Measure, Argument>>)[measure];
    values.set(
      measure,
      tried === undefined ? valueFor(context, sheet, row, measure, chosen) : [tried, 'changed here'],
    );
  }
  const value = (measure: Measure): Argument => values.get(measure)![0];
  const number = (measure: Measure): number | undefined => {
    const found = value(measure);
    return typeof found === 'number' ? found : undefined;
  };
  return {
    title: titleOf(context, sheet, row),
    sheet,
    row,
    value,
    number,
    origin: (measure) => values.get(measure)![1],
    missing: NEEDED.filter((measure) => number(measure) === undefined),
  };
}

function valueFor(
  { book, calculation }: ReadContext,
  sheet: Sheet,
  row: number,
  measure: Measure,
  chosen: Readonly<Record<string, string>>,
): readonly [Argument, Origin] {
  const own = Object.hasOwn(chosen, measure) ? chosen[measure] : undefined;
  const column = columnFor(sheet, measure, chosen);
  const value = column ? calculation.value(sheet.id, column.id, row) : null;
  if (value !== null && value !== '') return [value, 'row'];
  const needed = (NEEDED as readonly string[]).includes(measure);
  const named =
    own === undefined ? (needed ? undefined : cellInRole(book, measure)) : book.names.get(nameKey(own));
  const cell = named ? calculation.value(named.sheet, named.column, named.row) : null;
  return cell === null || cell === '' ? [null, 'default'] : [cell, 'setting'];
}

/** What the row is called: its athlete, else its first text. */
export function titleOf(context: ReadContext, sheet: Sheet, row: number): string {
  const athlete = athleteIn(context, sheet, row);
  if (athlete !== undefined) return athlete;
  for (const column of sheet.columns) {
    if (column.kind !== 'text' && column.kind !== 'choice') continue;
    const value = context.calculation.value(sheet.id, column.id, row);
    if (typeof value === 'string' && value.trim() !== '') return value;
  }
  return `${sheet.label}, row ${row + 1}`;
}

/** Measures that the figure cannot do without and that a sheet has no column for. */
export function absentFrom(book: Book, sheet: Sheet): readonly string[] {
  const chosen = chosenColumns(book);
  return NEEDED.filter((measure) => !columnFor(sheet, measure, chosen)).map((measure) =>
    Object.hasOwn(chosen, measure) ? goneName(chosen[measure]!) : measure,
  );
}

/** The date that tells two rows of the same name apart. */
export function dateOf({ calculation, locale }: ReadContext, sheet: Sheet, row: number): string | undefined {
  const column = dayColumn(sheet);
  const value = column ? calculation.value(sheet.id, column.id, row) : null;
  return column && typeof value === 'number' ? displayOf(value, column, locale) : undefined;
}

/** A word that LEAN.AT takes; it answers for a wrong one itself. */
export const placementOf = (known: Known): BarRulePlacement => {
  const word = known.value('placement');
  return (
    typeof word === 'string' && word.trim() !== '' ? word.trim().toLowerCase() : 'high-bar'
  ) as BarRulePlacement;
};

/** `[placement], [foot], [stance]` as every posture function takes them. */
export const setup = (known: Known): readonly Argument[] => [
  known.value('placement'),
  known.value('foot'),
  known.value('stance'),
];
export const build = (known: Known): readonly Argument[] => NEEDED.map((measure) => known.value(measure));

/** The lifter as the drawing's kernel takes one; the functions' checks come before. */
export const lifterOf = (known: Known, lift: number, depth: number): Lifter => ({
  femur: known.number('femur')!,
  tibia: known.number('tibia')!,
  trunk: known.number('trunk')!,
  ankle: known.number('ankle')!,
  lift,
  depth,
  placement: placementOf(known),
  foot: known.number('foot'),
  stance: known.number('stance') ?? 0,
});

/** Asks a function of the formula language. */
export const ask = (name: string, args: readonly Argument[]) => invoke(registry.get(name)!, args);

/** The number of a named cell with a role; undefined where the book has none. */
export function settingOf({ book, calculation }: ReadContext, role: string): number | undefined {
  const named = cellInRole(book, role);
  const value = named ? calculation.value(named.sheet, named.column, named.row) : null;
  return typeof value === 'number' ? value : undefined;
}
