import type { Edit } from '../../book/edit.ts';
import type { Book } from '../../book/model.ts';
import { withFormulas, withNumbers } from './formulas.ts';
import { type ColumnMarks, marksOfSheet, marksRecord, type TrendSource } from './record.ts';

/*
 * What happens to marks when something that they name changes. An edit of a sheet's marks replaces the whole record, so
 * each change here starts from what the edits before it leave.
 */

type SetPart = Extract<Edit, { do: 'set-part' }>;

const edit = (sheet: string, marks: readonly ColumnMarks[]): SetPart => ({
  do: 'set-part',
  part: 'marks',
  key: sheet,
  value: marksRecord(marks),
});

/** The edits that rewrite the formulas of all marks, and how many changed. */
export function rewrittenMarks(
  book: Book,
  rewrite: (formula: string, home: { readonly sheet: string; readonly column: string }) => string,
): { edits: readonly Edit[]; count: number } {
  const edits: Edit[] = [];
  let count = 0;
  for (const { id } of book.sheets) {
    const before = count;
    const marks = marksOfSheet(book, id).map((one) =>
      withFormulas(one, (formula) => {
        const text = rewrite(formula, { sheet: id, column: one.column });
        if (text !== formula) count++;
        return text;
      }),
    );
    if (count > before) edits.push(edit(id, marks));
  }
  return { edits, count };
}

/** The marks of a sheet as these edits will leave them. */
function marksAfter(book: Book, edits: readonly Edit[], sheet: string): readonly ColumnMarks[] {
  const last = edits.findLast(
    (one): one is SetPart => one.do === 'set-part' && one.part === 'marks' && one.key === sheet,
  );
  if (!last) return marksOfSheet(book, sheet);
  return marksOfSheet({ ...book, parts: { ...book.parts, marks: new Map([[sheet, last.value]]) } }, sheet);
}

/** These edits, and those that take out marks on a column that goes, and lines drawn from it. */
export function losingMarks(
  book: Book,
  edits: readonly Edit[],
  gone: (sheet: string, column: string) => boolean,
): readonly Edit[] {
  const more: Edit[] = [];
  for (const { id } of book.sheets) {
    const marks = marksAfter(book, edits, id);
    const left = marks
      .filter(({ column }) => !gone(id, column))
      .map(({ trend, ...rest }) => {
        const kept = trend && trendWithout(trend, id, gone);
        return kept ? { ...rest, trend: kept } : rest;
      });
    if (JSON.stringify(left) !== JSON.stringify(marks)) more.push(edit(id, left));
  }
  return [...edits, ...more];
}

function trendWithout(
  trend: TrendSource,
  home: string,
  gone: (sheet: string, column: string) => boolean,
): TrendSource | undefined {
  if (trend.is === 'log') {
    const lost =
      [trend.dates, trend.values, trend.who].some((column) => gone(trend.sheet, column)) ||
      gone(home, trend.by);
    return lost ? undefined : trend;
  }
  const columns = trend.columns.filter((column) => !gone(home, column));
  return columns.length > 1 ? { ...trend, columns } : undefined;
}

/** These edits, and one that gives a copied column the marks of the first. */
export function copyingMarks(
  book: Book,
  edits: readonly Edit[],
  sheet: string,
  from: string,
  to: string,
  rewrite: (formula: string) => string,
): readonly Edit[] {
  const marks = marksAfter(book, edits, sheet);
  const own = marks.find(({ column }) => column === from);
  return own ? [...edits, edit(sheet, [...marks, { ...withFormulas(own, rewrite), column: to }])] : edits;
}

/** The edits that give a copy of a sheet the marks of the first. */
export function copiedMarks(
  book: Book,
  from: string,
  to: string,
  rewrite: (formula: string) => string,
): readonly Edit[] {
  const marks = marksOfSheet(book, from);
  if (marks.length === 0) return [];
  const copies = marks.map((one): ColumnMarks => {
    const { trend, ...rest } = withFormulas(one, rewrite);
    if (!trend) return rest;
    return { ...rest, trend: trend.is === 'log' && trend.sheet === from ? { ...trend, sheet: to } : trend };
  });
  return [edit(to, copies)];
}

/** The edit that gives the numbers of a column's marks another measure, where there are any. */
export function remeasuredMarks(
  book: Book,
  edits: readonly Edit[],
  sheet: string,
  column: string,
  change: (number: number) => number,
): readonly Edit[] {
  const marks = marksAfter(book, edits, sheet);
  const after = marks.map((one) => (one.column === column ? withNumbers(one, change) : one));
  return JSON.stringify(after) === JSON.stringify(marks) ? [] : [edit(sheet, after)];
}
