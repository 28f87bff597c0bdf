import type { Book, Json } from '../../book/model.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';

/** What a mark says. Each has a shape and a word of its own: the colour only helps. */
export const tones = ['attend', 'watch', 'good', 'note', 'plain'] as const;
export type Tone = (typeof tones)[number];

const formula = z.string().min(1).max(8192);
/** What a value is compared with: a number in the unit of calculation (a date's serial day), a text, or a formula computed in the row. */
const operand = z.union([
  z.strictObject({ number: z.number() }),
  z.strictObject({ text: z.string().max(1000) }),
  z.strictObject({ formula }),
]);
export type Operand = z.infer<typeof operand>;

export const comparisons = ['above', 'at least', 'below', 'at most', 'equal', 'unequal'] as const;
export const spans = ['between', 'outside'] as const;
export const states = ['yes', 'no', 'blank', 'filled'] as const;

const when = z.union([
  z.strictObject({ is: z.enum(comparisons), to: operand }),
  z.strictObject({ is: z.enum(spans), from: operand, to: operand }),
  z.strictObject({ is: z.literal('containing'), text: z.string().min(1).max(1000) }),
  z.strictObject({ is: z.enum(states) }),
  z.strictObject({ is: z.literal('true'), formula }),
]);
export type When = z.infer<typeof when>;

const rule = z.strictObject({
  when,
  tone: z.enum(tones),
  /** The owner's words for it, read after the word of the tone. */
  says: z.string().min(1).max(200).optional(),
});
export type Rule = z.infer<typeof rule>;

const id = z.string().min(1).max(300);
/** A bar for each number between two ends; the minimum and the maximum of the column where none is given. */
const scale = z.strictObject({ from: operand.optional(), to: operand.optional() });
export type Scale = z.infer<typeof scale>;

/** A line through the row's values of some columns, or through the values of a log that belong to the row. Columns by id. */
const trend = z.union([
  z.strictObject({
    is: z.literal('columns'),
    columns: z.array(id).min(2).max(60),
    together: z.boolean().optional(),
  }),
  z.strictObject({
    is: z.literal('log'),
    sheet: id,
    dates: id,
    values: id,
    /** Column of the log, and the column of this sheet that says the same of a row. */
    who: id,
    by: id,
    /** The newest values that are drawn. */
    last: z.int().min(2).max(200),
    together: z.boolean().optional(),
  }),
]);
export type TrendSource = z.infer<typeof trend>;

const columnMarks = z.strictObject({
  /** Id. */
  column: id,
  /** The first that holds in a row is shown. */
  rules: z.array(rule).max(30),
  scale: scale.optional(),
  trend: trend.optional(),
});
export type ColumnMarks = z.infer<typeof columnMarks>;

/** What the book's part `marks` keeps under a sheet's id: the columns that are marked. */
export const sheetMarks = z.strictObject({ columns: z.array(columnMarks).max(1000) });

const read = new WeakMap<object, readonly ColumnMarks[] | string>();

/** The marks of a sheet, or why they cannot be read. A record that was read once is known by identity. */
function reading(kept: Json): readonly ColumnMarks[] | string {
  if (kept === null || typeof kept !== 'object') return 'it is not a record';
  let found = read.get(kept);
  if (found === undefined) {
    const { data, error } = sheetMarks.safeParse(kept);
    const [issue] = error?.issues ?? [];
    found = data?.columns ?? `at "${issue?.path.join('.')}": ${issue?.message}`;
    read.set(kept, found);
  }
  return found;
}

/** The marks kept for a sheet; what cannot be read counts as none. */
export function marksOfSheet(book: Book, sheet: string): readonly ColumnMarks[] {
  const kept = book.parts.marks.get(sheet);
  const found = kept === undefined ? [] : reading(kept);
  return typeof found === 'string' ? [] : found;
}

/** The same for whoever writes them back. @throws Refusal where they cannot be read: nothing unread is written over */
export function marksToChange(book: Book, sheet: string): readonly ColumnMarks[] {
  const kept = book.parts.marks.get(sheet);
  const found = kept === undefined ? [] : reading(kept);
  if (typeof found === 'string')
    refuse(`The marks of this sheet cannot be read (${found}). They are unchanged.`);
  return found;
}

/** The record for some columns' marks; null where none is left. */
export function marksRecord(columns: readonly ColumnMarks[]): Json {
  const left = columns.filter((one) => one.rules.length > 0 || one.scale || one.trend);
  return left.length ? (JSON.parse(JSON.stringify({ columns: left })) as Json) : null;
}
