/** What is chosen for the report, as it is in the book. */
import { iccForms } from '../../../functions/statistics/icc.ts';
import type { Book } from '../../book/model.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';

const name = z.string().min(1).max(300);

/** Columns of a sheet that hold repeated trials of one measure, rows being athletes. */
const trialSet = z.strictObject({
  title: z.string().max(200).optional(),
  sheet: name,
  columns: z.array(name).min(2).max(20),
  /** Of earlier books: the first one given is the form of the whole report. */
  form: z.enum(iccForms).optional(),
});
export type TrialSet = z.infer<typeof trialSet>;

/** Measures of a sheet that are described, by the texts of one column where there are groups. */
const groupSet = z.strictObject({
  sheet: name,
  columns: z.array(name).min(1).max(100),
  by: name.optional(),
});
export type GroupSet = z.infer<typeof groupSet>;

/**
 * What the cohort report of a book holds: the record `report` of its part `handouts`. Sheets by id or name, columns by
 * name. What is left out is as usual.
 */
export const reportSettings = z.strictObject({
  title: z.string().max(200).optional(),
  authors: z.string().max(300).optional(),
  /** The authors' own words on who was measured and how. */
  methods: z.string().max(10_000).optional(),
  trials: z.array(trialSet).max(40).optional(),
  groups: z.array(groupSet).max(40).optional(),
  /** Keys of charts; all of them where left out. */
  charts: z.array(z.string().max(200)).max(100).optional(),
  /** Form of the ICC and confidence level where the book has no cells named `icc_form` and `confidence_level`. */
  form: z.enum(iccForms).optional(),
  confidence: z.number().gt(0).lt(1).optional(),
});
export type ReportSettings = z.infer<typeof reportSettings>;

export const reportKey = 'report';

/** @throws Refusal for a record that cannot be read */
export function reportSettingsOf(book: Book): ReportSettings {
  const kept = book.parts.handouts.get(reportKey);
  if (kept === undefined) return {};
  const read = reportSettings.safeParse(kept);
  if (read.success) return read.data;
  const [issue] = read.error.issues;
  return refuse(
    `The book's settings for the report cannot be read at "${issue?.path.join('.')}": ${issue?.message}. Edit or remove them.`,
  );
}
