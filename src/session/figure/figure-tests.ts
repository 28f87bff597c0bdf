import { sheetOf } from '../../book/book.ts';
import type { Column, Sheet } from '../../book/model.ts';
import { columnInRole } from '../../book/roles/column-in-role.ts';
import { laterEndings, takenAgain } from '../../book/roles/list.ts';
import type { ReadContext } from '../open-book.ts';
import type { OtherTest } from './figure-answers.ts';
import { dateOf, type Known, type Measure, titleOf } from './figure-lifter.ts';

/** What may be measured again: the build, the ankle range and body mass. */
const again = takenAgain;

const remeasured = (sheet: Sheet, measure: Measure): Column | undefined => {
  for (const ending of laterEndings) {
    const found = columnInRole(sheet, `${measure}${ending}`);
    if (found?.kind === 'number') return found;
  }
  return undefined;
};

/** Rows of one sheet that are looked through. */
const most = 5000;

/** Rows of other sheets where this lifter's ankle range or lengths stand again. */
export function otherTests(context: ReadContext, known: Known): readonly OtherTest[] {
  const own = known.title.trim().toLowerCase();
  return context.book.sheets
    .filter((sheet) => sheet.id !== known.sheet.id)
    .flatMap((sheet) => {
      const measured = again.filter((measure) => measure !== 'mass' && measure !== 'stature');
      const columns = measured.flatMap((measure) => remeasured(sheet, measure) ?? []);
      if (columns.length === 0) return [];
      const rows = Array.from({ length: Math.min(sheet.rows, most) }, (_, row) => row);
      return rows
        .filter((row) => titleOf(context, sheet, row).trim().toLowerCase() === own)
        .filter((row) =>
          columns.some(({ id }) => typeof context.calculation.value(sheet.id, id, row) === 'number'),
        )
        .map((row) => {
          const date = dateOf(context, sheet, row);
          return { sheet: sheet.id, row, title: `${sheet.label}${date ? `, ${date}` : `, row ${row + 1}`}` };
        });
    });
}

/** The same lifter as another test found him or her: what was measured there goes before what stands in this row. */
export function asTested(
  context: ReadContext,
  known: Known,
  { sheet: id, row }: Omit<OtherTest, 'title'>,
): Known {
  const sheet = sheetOf(context.book, id);
  const found = new Map<Measure, number>();
  for (const measure of again) {
    const column = remeasured(sheet, measure);
    const value = column && row < sheet.rows ? context.calculation.value(sheet.id, column.id, row) : null;
    if (typeof value === 'number') found.set(measure, value);
  }
  return {
    ...known,
    value: (measure) => found.get(measure) ?? known.value(measure),
    number: (measure) => found.get(measure) ?? known.number(measure),
  };
}
