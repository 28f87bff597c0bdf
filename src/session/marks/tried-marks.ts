import { columnOf, findSheet, sheetOf } from '../../book/book.ts';
import type { ReadContext } from '../open-book.ts';
import { failed, type MarksDraft, type Reading, readRule, readScale } from './draft.ts';
import type { ColumnMarks, Rule, TrendSource } from './mark-record.ts';
import { applied, type RuleCount } from './mark-rules.ts';
import { numberInWords } from './mark-words.ts';
import { endsOf } from './scale.ts';
import { trendOf } from './trend.ts';

/** What marks that are being written would do; `sentence` says what is wrong with a part. */
export interface TriedMarks {
  readonly rows: number;
  readonly rules: readonly (RuleCount | { readonly sentence: string })[];
  readonly scale?: string | { readonly sentence: string };
  /** Rows that would have a line. */
  readonly trend?: number | { readonly sentence: string };
}

/** Rows whose lines are counted; more are not drawn for a count. */
const MOST = 20_000;

export function triedMarks(
  context: ReadContext,
  sheetId: string,
  columnId: string,
  draft: MarksDraft,
): TriedMarks {
  const about = readingOf(context, sheetId, columnId);
  const read = draft.rules.map((one) => readRule(one, about));
  const good = read.filter((one): one is Rule => !failed(one));
  const { counts } = applied(context, sheetId, context.calculation.column(sheetId, columnId), good);
  const left = [...counts];
  return {
    rows: about.sheet.rows,
    rules: read.map((one) => (failed(one) ? one : left.shift()!)),
    ...(draft.scale ? { scale: triedScale(context, about, draft.scale) } : {}),
    ...(draft.trend ? { trend: triedTrend(context, about, draft.trend) } : {}),
  };
}

/** The record that a draft makes, or the first thing that is wrong with it. */
export function marksFrom(
  context: ReadContext,
  sheetId: string,
  columnId: string,
  draft: MarksDraft,
): ColumnMarks | { readonly sentence: string } {
  const about = readingOf(context, sheetId, columnId);
  const rules: Rule[] = [];
  for (const [index, one] of draft.rules.entries()) {
    const rule = readRule(one, about);
    if (failed(rule)) return { sentence: `Rule ${index + 1}: ${rule.sentence}` };
    rules.push(rule);
  }
  const scale = draft.scale && readScale(draft.scale, about);
  if (scale && failed(scale)) return scale;
  const wrong = draft.trend && wrongTrend(context, about, draft.trend);
  if (wrong) return { sentence: wrong };
  return {
    column: columnId,
    rules,
    ...(scale ? { scale } : {}),
    ...(draft.trend ? { trend: draft.trend } : {}),
  };
}

function readingOf({ book, calculation, locale }: ReadContext, sheetId: string, columnId: string): Reading {
  const sheet = sheetOf(book, sheetId);
  return { calculation, locale, sheet, column: columnOf(sheet, columnId) };
}

function triedScale(
  context: ReadContext,
  about: Reading,
  draft: NonNullable<MarksDraft['scale']>,
): NonNullable<TriedMarks['scale']> {
  const scale = readScale(draft, about);
  if (failed(scale)) return scale;
  const ends = endsOf(context, about.sheet.id, about.column.id, scale);
  if ('sentence' in ends) return ends;
  const end = (value: number): string =>
    numberInWords(Number(value.toPrecision(4)), about.column, about.locale);
  return `from ${end(ends.from)} to ${end(ends.to)}`;
}

function triedTrend(
  context: ReadContext,
  about: Reading,
  trend: TrendSource,
): NonNullable<TriedMarks['trend']> {
  const wrong = wrongTrend(context, about, trend);
  if (wrong) return { sentence: wrong };
  const draw = trendOf(context, about.sheet.id, trend);
  let lines = 0;
  const rows = Math.min(about.sheet.rows, MOST);
  for (let row = 0; row < rows; row++) if (draw(row)) lines++;
  return lines;
}

/** Why a line cannot be drawn from what is chosen; undefined where it can. */
function wrongTrend({ book }: ReadContext, { sheet }: Reading, trend: TrendSource): string | undefined {
  if (trend.is === 'columns') {
    if (trend.columns.length < 2) return 'Select two or more columns, in the order of the line.';
    const wrong = trend.columns.find((id) => sheet.columns.find((one) => one.id === id)?.kind !== 'number');
    return wrong === undefined ? undefined : `The column "${wrong}" is not a number column. Select another.`;
  }
  const log = findSheet(book, trend.sheet);
  if (!log) return 'The sheet with the log is no longer in the book. Select another.';
  const kindOf = (id: string) => log.columns.find((one) => one.id === id)?.kind;
  if (kindOf(trend.dates) !== 'date') return `Select the column of ${log.label} with the dates.`;
  if (kindOf(trend.values) !== 'number') return `Select the column of ${log.label} with the values.`;
  if (kindOf(trend.who) === undefined) return `Select the column of ${log.label} that names the person.`;
  return sheet.columns.some(({ id }) => id === trend.by)
    ? undefined
    : 'Select the column of this sheet that names the person.';
}
