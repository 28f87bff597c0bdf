import { invoke } from '../../functions/core/invoke.ts';
import { type Issue, isIssue } from '../../functions/core/issue.ts';
import type { Argument } from '../../functions/core/value.ts';
import type { BarRulePlacement } from '../../functions/posture/balance.ts';
import { figureOf as pointsOf } from '../../functions/posture/figure.ts';
import { registry } from '../../functions/registry.ts';
import { columnNamed, sheetOf } from '../book/book.ts';
import type { Book, Sheet } from '../book/model.ts';
import { nameKey } from '../book/names.ts';
import { refuse } from '../book/refusal.ts';
import { z } from '../book/zod.ts';
import type { Figure, PostureFigure } from './api.ts';
import type { Viewed } from './views.ts';

/** What can be tried out in the figure without touching the data. Lengths cm, angles deg. */
export const figureOptions = z.strictObject({
  lift: z.number().optional(),
  depth: z.number().optional(),
  ankle: z.number().optional(),
  stance: z.number().optional(),
  placement: z.string().optional(),
});
export type FigureOptions = z.infer<typeof figureOptions>;

const NEEDED = ['femur', 'tibia', 'trunk', 'ankle'] as const;
const MEASURES = [...NEEDED, 'foot', 'lift', 'placement', 'stance'] as const;
type Measure = (typeof MEASURES)[number];

/** SDs of measuring that the error band is for: a tape to 1 cm, an ankle test to 2°. */
export const MEASURING_ERROR = { length: 1, ankle: 2 } as const;

const settingSchema = z.object({ columns: z.record(z.string(), z.string()).optional() });

/**
 * The lifter of a row: flat and, with a lift, lifted. A measure comes from the column of its name (femur, tibia, trunk,
 * foot, ankle, lift, placement, stance), from another one that the book's setting `figure` names, or for set-up from a
 * named cell (the setting may name one for the lengths too); what is tried out goes before all of them.
 */
export function figureOf(viewed: Viewed, sheetId: string, row: number, given: FigureOptions = {}): Figure {
  const { book } = viewed;
  const sheet = sheetOf(book, sheetId);
  if (!(row >= 0 && row < sheet.rows)) refuse(`The sheet "${sheet.name}" has no row ${row + 1}.`);
  const chosen = chosenColumns(book);
  const values = new Map<Measure, Argument>();
  for (const measure of MEASURES)
    values.set(
      measure,
      (given as Partial<Record<Measure, Argument>>)[measure] ?? valueFor(viewed, sheet, row, measure, chosen),
    );
  const missing = NEEDED.filter((measure) => typeof values.get(measure) !== 'number');
  const depth = given.depth ?? 0;
  const lift = values.get('lift');
  const wanted = typeof lift === 'number' && lift > 0 ? lift : 0;
  const sentence = missing.length
    ? `The figure needs ${missing.join(', ')} of this row; columns of these names hold ${missing.length === 1 ? 'it' : 'them'}, or the setting of the figure names others.`
    : '';
  const posture = (height: number): Figure['flat'] =>
    sentence ? { sentence } : postureOf(viewed, values, depth, height);
  return {
    sheet: sheet.id,
    row,
    title: titleOf(viewed, sheet, row),
    flat: posture(0),
    lifted: wanted > 0 ? posture(wanted) : null,
    leanError: missing.length ? null : leanError(values),
    missing,
  };
}

function chosenColumns(book: Book): Readonly<Record<string, string>> {
  const setting = settingSchema.safeParse(book.parts.settings.get('figure'));
  return (setting.success && setting.data.columns) || {};
}

function valueFor(
  { book, calculation }: Viewed,
  sheet: Sheet,
  row: number,
  measure: Measure,
  chosen: Readonly<Record<string, string>>,
): Argument {
  const own = Object.hasOwn(chosen, measure) ? chosen[measure] : undefined;
  const column = columnNamed(sheet, own ?? measure);
  const value = column ? calculation.value(sheet.id, column.id, row) : null;
  if (value !== null && value !== '') return value;
  const needed = (NEEDED as readonly string[]).includes(measure);
  const named = book.names.get(nameKey(own ?? (needed ? '' : measure)));
  return named ? calculation.value(named.sheet, named.column, named.row) : null;
}

/** The points of a posture, or the sentence why there is none. LEAN.AT checks the figures as it does in a formula. */
function postureOf(
  viewed: Viewed,
  values: ReadonlyMap<Measure, Argument>,
  depth: number,
  lift: number,
): PostureFigure | { readonly sentence: string } {
  const at = (measure: Measure): Argument => values.get(measure) ?? undefined;
  const lean = invoke(registry.get('LEAN.AT')!, [
    depth,
    at('femur'),
    at('tibia'),
    at('trunk'),
    at('ankle'),
    lift,
    at('placement'),
    at('foot'),
    at('stance'),
  ]);
  if (isIssue(lean)) return { sentence: viewed.calculation.sentence(lean) };
  const points = pointsOf({
    femur: at('femur') as number,
    tibia: at('tibia') as number,
    trunk: at('trunk') as number,
    ankle: at('ankle') as number,
    lift,
    depth,
    ...placementOf(at('placement')),
    foot: typeof at('foot') === 'number' ? (at('foot') as number) : undefined,
    stance: typeof at('stance') === 'number' ? (at('stance') as number) : 0,
  });
  return isIssue(points) ? { sentence: viewed.calculation.sentence(points as Issue) } : points;
}

/** LEAN.AT has checked the word already. */
const placementOf = (word: Argument): { placement?: BarRulePlacement } =>
  typeof word === 'string' && word.trim() !== ''
    ? { placement: word.trim().toLowerCase() as BarRulePlacement }
    : {};

function leanError(values: ReadonlyMap<Measure, Argument>): number | null {
  const error = registry.get('LEAN.ERROR');
  if (!error) return null;
  const lengths = NEEDED.map((measure) => values.get(measure));
  const { length, ankle } = MEASURING_ERROR;
  const setup = [0, values.get('placement'), values.get('foot'), values.get('stance')];
  const value = invoke(error, [length, ankle, ...lengths, ...setup]);
  return typeof value === 'number' ? value : null;
}

/** What the row is called: its first text. */
function titleOf({ calculation }: Viewed, sheet: Sheet, row: number): string {
  for (const column of sheet.columns) {
    if (column.kind !== 'text' && column.kind !== 'choice') continue;
    const value = calculation.value(sheet.id, column.id, row);
    if (typeof value === 'string' && value.trim() !== '') return value;
  }
  return `${sheet.label}, row ${row + 1}`;
}
