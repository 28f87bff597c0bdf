import type { Dimension } from '../units/dimension.ts';
import { dimensions, spans } from '../units/dimension.ts';
import { partNames } from './model.ts';
import { z } from './zod.ts';

/** Sizes that a book file may have. Past them it is refused before any memory is taken. */
export const limits = {
  characters: 500_000_000,
  sheets: 500,
  columns: 2_000,
  rows: 2_000_000,
  /** Rows × columns with values or a formula, over all sheets: 9 bytes each. */
  cells: 60_000_000,
  names: 10_000,
  /** Characters of a name or a label, of any other text, of a formula. */
  short: 300,
  text: 100_000,
  formula: 10_000,
} as const;

const short = z.string().max(limits.short);
const long = z.string().max(limits.text);
const id = z.string().min(1).max(100);
const formula = z.string().max(limits.formula);

/** A column's cells are looked at by a loop of their own: a check each by zod costs more than reading the whole file. */
const cells = z.custom<readonly unknown[]>(Array.isArray, { error: 'a list of cells is expected' });

export const columnSchema = z.strictObject({
  id: id.optional(),
  name: short,
  label: short.optional(),
  kind: z.enum(['number', 'text', 'date', 'yes-no', 'choice']),
  dimension: z.enum(Object.keys(dimensions) as Dimension[]).optional(),
  unit: short.optional(),
  per: z.enum(spans).optional(),
  choices: z.array(short).max(1_000).optional(),
  formula: formula.optional(),
  note: long.optional(),
  width: z.number().min(10).max(2_000).optional(),
  format: z
    .strictObject({ digits: z.int().min(0).max(15).optional(), percent: z.boolean().optional() })
    .optional(),
  hidden: z.boolean().optional(),
  role: short.optional(),
});

/** A sheet without its columns. */
export const sheetHeadSchema = z.strictObject({
  id: id.optional(),
  name: short,
  label: short.optional(),
  purpose: z.enum(['gathered', 'worked', 'notes']),
  note: long.optional(),
  rows: z.int().min(0).max(limits.rows),
});

const sheetSchema = sheetHeadSchema.extend({
  columns: z.array(columnSchema.extend({ cells: cells.optional() })).max(limits.columns),
});

const nameSchema = z.strictObject({
  name: short,
  sheet: short,
  column: short,
  row: z.int().min(1).max(limits.rows),
  note: long.optional(),
  dimension: z.enum(Object.keys(dimensions) as Dimension[]).optional(),
  unit: short.optional(),
  per: z.enum(spans).optional(),
  role: short.optional(),
});

export const frameSchema = z.strictObject({
  leverbook: z.literal(1),
  title: short,
  sheets: z.array(sheetSchema).max(limits.sheets),
  names: z.array(nameSchema).max(limits.names).optional(),
  /** Records of other layers; plain JSON, checked by `jsonProblem` and by whoever reads them. */
  parts: z.partialRecord(z.enum(partNames), z.custom<Record<string, unknown>>(isRecord)).optional(),
});

export type Frame = z.infer<typeof frameSchema>;
export type SheetFrame = Frame['sheets'][number];
export type ColumnFrame = SheetFrame['columns'][number];

export function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
