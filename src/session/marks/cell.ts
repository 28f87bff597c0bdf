import type { Sheet } from '../../book/model.ts';
import type { Place } from '../../calc/api.ts';
import type { ReadContext } from '../open-book.ts';
import { drawingsOf } from './drawings.ts';
import { marksOfSheet } from './mark-record.ts';
import { marksOutline } from './mark-words.ts';

/** What the marks of a cell say, a sentence each: the rule that it shows, its place on the scale, its line. */
export function markedInWords(context: ReadContext, sheet: Sheet, place: Required<Place>): readonly string[] {
  const own = marksOfSheet(context.book, sheet.id).find(({ column }) => column === place.column);
  const index = sheet.columns.findIndex(({ id }) => id === place.column);
  if (!own || index < 0) return [];
  const [drawing] = drawingsOf(context, sheet, { column: index, columns: 1, rows: 1 }, () => place.row);
  const rule = marksOutline(own, sheet.columns[index]!, context.locale).rules[(drawing?.rules?.[0] ?? 0) - 1];
  const trend = drawing?.trends?.[0];
  return [
    ...(rule ? [`Marked ${rule.says} (${rule.when}).`] : []),
    ...(drawing?.scale && !Number.isNaN(drawing.scale.at[0]!) ? [`On a scale ${drawing.scale.words}.`] : []),
    ...(trend ? [`The line is ${trend.words}.`] : []),
  ];
}
