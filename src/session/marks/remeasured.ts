/** Marks follow when their column changes its measure. */
import type { Edit } from '../../book/edit.ts';
import type { Book } from '../../book/model.ts';
import { withNumbers } from './formulas.ts';
import { type ColumnMarks, marksOfSheet, marksRecord } from './mark-record.ts';

type SetPart = Extract<Edit, { do: 'set-part' }>;

/** The marks of a sheet as these edits will leave them: an edit of a sheet's marks replaces the whole record. */
function marksAfter(book: Book, edits: readonly Edit[], sheet: string): readonly ColumnMarks[] {
  const last = edits.findLast(
    (one): one is SetPart => one.do === 'set-part' && one.part === 'marks' && one.key === sheet,
  );
  if (!last) return marksOfSheet(book, sheet);
  return marksOfSheet({ ...book, parts: { ...book.parts, marks: new Map([[sheet, last.value]]) } }, sheet);
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
  return JSON.stringify(after) === JSON.stringify(marks)
    ? []
    : [{ do: 'set-part', part: 'marks', key: sheet, value: marksRecord(after) }];
}
