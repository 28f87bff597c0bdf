/** What marks point at: the column that bears them, the columns of their lines, and what their formulas name. */

import { definePart, type References } from '../../book/references/part.ts';
import { withFormulas } from './formulas.ts';
import { type ColumnMarks, sheetMarks, type TrendSource } from './mark-record.ts';

export const marksPart = definePart({
  word: 'set of marks',
  part: 'marks',
  bySheet: true,
  schema: sheetMarks,
  references: (record, visit, sheet) => {
    const columns = visit.columns.own(sheet, record.columns, ({ trend, ...rest }, formulas) => {
      const after = withFormulas(rest, (formula) => formulas(formula, sheet));
      const line = trend && trendAfter(trend, visit, sheet);
      return line ? { ...after, trend: line } : after;
    });
    const left = columns.filter(hasAny);
    return left.length ? { columns: left } : null;
  },
});

const hasAny = ({ rules, scale, trend }: ColumnMarks): boolean =>
  rules.length > 0 || scale !== undefined || trend !== undefined;

/** A line goes with the columns that it cannot do without. */
function trendAfter(
  trend: TrendSource,
  { columns, sheets }: References,
  home: string,
): TrendSource | undefined {
  if (trend.is === 'columns') {
    const left = trend.columns.flatMap((id) => columns.ofId(home, id) ?? []);
    return left.length > 1 ? { ...trend, columns: left } : undefined;
  }
  const of = (id: string): string | undefined => columns.ofId(trend.sheet, id);
  const gone = [of(trend.dates), of(trend.values), of(trend.who), columns.ofId(home, trend.by)];
  return gone.includes(undefined) ? undefined : { ...trend, sheet: sheets.ofId(trend.sheet) };
}
