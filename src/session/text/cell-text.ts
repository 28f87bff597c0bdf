/** How a cell of an open book is shown: in its column's way, or as its own formula says where the column does not. */
import { Kind } from '../../../functions/core/value.ts';
import type { Column, Sheet } from '../../book/model.ts';
import { namedRows, takesUnits } from '../../book/setting-unit.ts';
import type { Place } from '../../calc/api.ts';
import { isoFromSerial } from '../../units/date.ts';
import type { ReadContext } from '../open-book.ts';
import { displayOf, shownWith, type Way, wayOf, writer } from './display.ts';

type Seen = Pick<ReadContext, 'calculation' | 'locale'>;
type At = Pick<Required<Place>, 'sheet' | 'row'>;

/** With its unit where no heading says it: `41.3 cm`, `0.8 kg per week`. A held text is not looked at here. */
export const cellText = (seen: Seen, column: Column, at: At): string =>
  shownWith(seen.calculation.value(at.sheet, column.id, at.row), way(seen, column, at), seen.locale);

/** The same for other programs: a number alone, a date of ISO 8601, which is read in every language. */
export function barely(seen: Seen, column: Column, at: At): string {
  const value = seen.calculation.value(at.sheet, column.id, at.row);
  const { column: as } = way(seen, column, at);
  const day = as.kind === 'date' && typeof value === 'number' ? isoFromSerial(value) : undefined;
  return day ?? displayOf(value, as, seen.locale);
}

/** Writes the cells of one column, held ones too. Made once for many rows. */
export function cellWriter(seen: ReadContext, sheet: Sheet, column: Column): (row: number) => string {
  const named = takesUnits(column) ? namedRows(seen.book, sheet.id, column.id) : none;
  const cells = sheet.cells.get(column.id)!;
  const range = seen.calculation.column(sheet.id, column.id);
  const write = writer(column, seen.locale);
  return (row) =>
    cells.held.get(row)?.held ??
    (cells.formulas.has(row) || named.has(row)
      ? cellText(seen, column, { sheet: sheet.id, row })
      : write(range, row));
}

const none: ReadonlyMap<number, unknown> = new Map();

function way({ calculation }: Seen, column: Column, { sheet, row }: At): Way {
  const dated = calculation.column(sheet, column.id).kinds[row] === Kind.date;
  return wayOf(column, dated ? { is: 'date' } : calculation.meaning(sheet, column.id, row));
}
