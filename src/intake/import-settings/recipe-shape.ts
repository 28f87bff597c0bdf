/** The shape of import settings. */
import { limits } from '../../book/file-frame.ts';
import type { Json } from '../../book/model.ts';
import { z } from '../../book/zod.ts';

const dateOrder = z.enum(['ymd', 'dmy', 'mdy']);
const decimal = z.enum(['.', ',']);
const words = z.array(z.string().max(60)).max(60);
const text = z.string().min(1).max(200);
/** As long as a cell may be. */
const heading = z.string().min(1).max(limits.text);

/** Which heading feeds which column, and how its cells are read. What is left out is found in the file each time. */
export const recipeColumn = z.strictObject({
  heading,
  /** Other headings that mean the same. */
  or: z.array(heading).max(20).optional(),
  /** Name of the sheet's column. */
  column: text,
  /** Unit of the cells, by its sign or a word for it. */
  unit: z.string().max(20).optional(),
  /** What a cell is multiplied with to be in that unit: 0.1 for tenths. */
  factor: z.number().positive().optional(),
  /** Heading of the column that gives the unit of each row. */
  unitsIn: heading.optional(),
  /** Texts that are read as others; as '' they are blank. */
  readAs: z.record(z.string().max(1000), z.string().max(1000)).optional(),
  decimal: decimal.optional(),
  dateOrder: dateOrder.optional(),
  clock: z.enum(['h:mm', 'm:ss']).optional(),
  missing: words.optional(),
  yes: words.optional(),
  no: words.optional(),
  /** The file may come without it. */
  optional: z.boolean().optional(),
});
export type RecipeColumn = z.infer<typeof recipeColumn>;

/** How a kind of file comes into a sheet; stored in the book, recognised by its headings. */
export const recipe = z.strictObject({
  version: z.literal(1),
  title: text,
  /** Name of the sheet. */
  sheet: text,
  columns: z.array(recipeColumn).min(1).max(2000),
  /** Headings that the recipe does not name: left out, matched with columns of the same name, or made new columns. */
  rest: z.enum(['ignore', 'match', 'add']).optional(),
  mode: z.enum(['append', 'replace', 'update']).optional(),
  /** Columns by which rows are recognised when updating. */
  key: z.array(text).max(8).optional(),
  /** What becomes of rows that the sheet has with other values, when rows are appended. */
  ofDiffering: z.enum(['leave', 'add']).optional(),
  /** Another shape for the rows. */
  shape: z
    .discriminatedUnion('to', [
      z.strictObject({ to: z.literal('long'), name: text.optional(), value: text.optional() }),
      z.strictObject({
        to: z.literal('wide'),
        name: text,
        value: text,
        by: z.array(text).min(1).max(20),
        columns: z.array(text).max(2000).optional(),
      }),
    ])
    .optional(),
  /** Each row is one set. */
  rowIsSet: z.boolean().optional(),
  /** Whose rows these are: the column that names somebody, and where its people are listed. */
  who: z
    .strictObject({
      column: text,
      /** Name of the sheet that lists people, and its column that names them. */
      roster: text,
      name: text,
      /** Its further columns that mean the same person: identifier, short name. */
      also: z.array(text).max(8).optional(),
      /** Answers to earlier questions: a text and the person it means. */
      same: z.record(z.string().max(200), z.string().max(200)).optional(),
    })
    .optional(),
  /** Missing-value words of all columns. */
  missing: words.optional(),
  /** How the file is read, where it must not be found out. */
  read: z
    .strictObject({
      encoding: z.string().max(40).optional(),
      delimiter: z.enum([',', ';', '\t', '|']).optional(),
      quote: z.enum(['"', "'", '']).optional(),
      preamble: z.int().min(0).max(1000).optional(),
      headingLines: z.int().min(0).max(2).optional(),
      unitsLine: z.boolean().optional(),
      footer: z.int().min(0).max(1000).optional(),
      shortRows: z.enum(['hold', 'place']).optional(),
      decimal: decimal.optional(),
      dateOrder: dateOrder.optional(),
    })
    .optional(),
});
export type Recipe = z.infer<typeof recipe>;

/** A record as it is stored: keys that are not set are left out. */
export const asJson = (record: object): JsonRecord => JSON.parse(JSON.stringify(record)) as JsonRecord;
export type JsonRecord = { readonly [key: string]: Json };

export const recipeJson = (r: Recipe): JsonRecord => asJson(r);

/** Whose rows a file has, and how they are found. */
export type Who = NonNullable<Recipe['who']>;
