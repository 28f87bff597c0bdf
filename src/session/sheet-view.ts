import type { Book } from '../book/model.ts';
import { z } from '../book/zod.ts';
import { rowView } from './row-view.ts';

/** Which figure the line of summaries shows below a sheet and below each group. */
export const statistics = ['count', 'mean', 'sd', 'least', 'most'] as const;
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
export const sheetView = z.strictObject({
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
