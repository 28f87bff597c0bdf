import type { Book } from '../../book/model.ts';
import { definePart } from '../../book/references/part.ts';
import { z } from '../../book/zod.ts';
import { rowView } from './row-view.ts';

/** Which figure the line of summaries shows below a sheet and below each group. */
export const statistics = ['count', 'sum', 'mean', 'sd', 'least', 'most'] as const;
export type Statistic = (typeof statistics)[number];

const column = z.string().min(1).max(300);
/** What a column shows in the lines of summaries in place of the sheet's figure: another, or a formula over the rows. */
const ownSummary = z.union([
  z.strictObject({ column, statistic: z.enum(statistics) }),
  z.strictObject({
    column,
    formula: z.string().min(1).max(8192),
    /** Stands before the value; the function where it is left out. */
    says: z.string().min(1).max(40).optional(),
    /** The value is a plain number, not one in the column's unit. */
    plain: z.boolean().optional(),
  }),
]);
export type OwnSummary = z.infer<typeof ownSummary>;

/** How a sheet is looked at, kept in the book's part `views` under the sheet's id. Data and their order stay as they are. */
const sheetView = z.strictObject({
  rows: rowView.optional(),
  /** Columns at the start that stay in view. */
  frozen: z.int().min(0).max(20).optional(),
  statistic: z.enum(statistics).optional(),
  summaries: z.array(ownSummary).max(1000).optional(),
});
export type SheetView = z.infer<typeof sheetView>;

/** The view kept for a sheet; one that cannot be read counts as none. */
export function sheetViewOf(book: Book, sheet: string): SheetView | undefined {
  const kept = book.parts.views.get(sheet);
  if (kept === undefined) return undefined;
  const read = sheetView.safeParse(kept);
  return read.success ? read.data : undefined;
}

/** Conditions, order, groups and summaries go with their column; a summary is copied with it. */
export const viewPart = definePart({
  word: 'view',
  part: 'views',
  bySheet: true,
  schema: sheetView,
  references: ({ rows, summaries, ...rest }, { columns }, sheet) => {
    const where = rows?.where && columns.about(sheet, rows.where);
    const sort = rows?.sort && columns.about(sheet, rows.sort);
    const group = rows?.group === undefined ? undefined : columns.ofId(sheet, rows.group);
    const own =
      summaries &&
      columns.own(sheet, summaries, (one, follow) =>
        'formula' in one ? { ...one, formula: follow(one.formula, sheet) } : one,
      );
    const looked = without({ where, sort, group });
    const after = without({ rows: looked, ...rest, summaries: own }) as SheetView | undefined;
    return after ?? null;
  },
});

/** A record without what is undefined or an empty list; undefined where nothing is left. */
function without(record: Readonly<Record<string, unknown>>): object | undefined {
  const left = Object.entries(record).filter(
    ([, value]) => value !== undefined && !(Array.isArray(value) && value.length === 0),
  );
  return left.length ? Object.fromEntries(left) : undefined;
}
