import { isIssue } from '../../../functions/core/issue.ts';
import type { Value } from '../../../functions/core/value.ts';
import { columnOf, sheetOf } from '../../book/book.ts';
import type { Column } from '../../book/model.ts';
import type { ReadContext } from '../open-book.ts';
import { displayOf } from '../text/display.ts';
import { figureText } from '../text/shown.ts';
import { rowsInView } from './row-view.ts';
import { sheetViewOf } from './sheet-view.ts';

/** A column's own formula over some rows, as the line of summaries shows it. */
export interface FormulaSummary {
  readonly text: string;
  /** Why it is an error. */
  readonly sentence?: string;
}

export interface SummaryFormula {
  readonly formula: string;
  readonly plain?: boolean | undefined;
}

/** The value of a formula over the rows given, all when left out, written as the column writes. */
export function formulaSummary(
  context: ReadContext,
  sheetId: string,
  columnId: string,
  { formula, plain = false }: SummaryFormula,
  rows?: ArrayLike<number>,
): FormulaSummary {
  const column = columnOf(sheetOf(context.book, sheetId), columnId);
  const value = context.calculation.ofSelection(formula, sheetId, rows);
  if (!isIssue(value)) return { text: written(context, value, column, plain) };
  const sentence =
    value.reason === 'array-in-row'
      ? `The formula returns ${(value.details?.rows as number) * (value.details?.columns as number)} values, but a summary shows one. Combine them, as in MEDIAN(${column.name}).`
      : context.calculation.sentence(value);
  return { text: value.code, sentence };
}

function written({ locale }: ReadContext, value: Value, column: Column, plain: boolean): string {
  if (typeof value !== 'number') return displayOf(value, column, locale);
  if (plain || (column.kind !== 'number' && column.kind !== 'date')) return figureText(value, '', locale);
  if (column.kind === 'date') return displayOf(value, column, locale);
  // One more digit than the values, as the mean has.
  const digits = column.format?.digits;
  return displayOf(value, { ...column, format: { ...column.format, digits: (digits ?? 1) + 1 } }, locale);
}

/** What a formula that is being written gives over the rows on show, or what is wrong with it. */
export function triedSummary(
  context: ReadContext,
  sheet: string,
  column: string,
  tried: SummaryFormula,
): FormulaSummary {
  const { ok, problems } = context.calculation.check(tried.formula, { sheet, column });
  if (!ok) return { text: '', sentence: problems[0]?.sentence ?? 'The formula cannot be read.' };
  const where = sheetViewOf(context.book, sheet)?.rows?.where;
  const rows = where?.length ? rowsInView(context, sheet, { where }) : undefined;
  return formulaSummary(context, sheet, column, tried, rows);
}
