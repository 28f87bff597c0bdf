import { Kind, type Value, valueAt } from '../../../functions/core/value.ts';
import { sheetOf } from '../../book/book.ts';
import { isoFromSerial } from '../../units/date.ts';
import type { ReadContext } from '../open-book.ts';

/** A row's values by column name: dates as ISO texts, numbers in base units, errors as issues. */
export interface RowRecord {
  /** From 0. */
  readonly row: number;
  readonly values: Readonly<Record<string, Value>>;
}

export function* recordsOf({ book, calculation }: ReadContext, id: string): Generator<RowRecord> {
  const sheet = sheetOf(book, id);
  const columns = sheet.columns.map(({ id, name, kind }) => ({
    name,
    kind,
    values: calculation.column(sheet.id, id),
  }));
  for (let row = 0; row < sheet.rows; row++) {
    const pairs = columns.map(({ name, kind, values }): [string, Value] => {
      const value = valueAt(values, row);
      const isDate = values.kinds[row] === Kind.date || (kind === 'date' && typeof value === 'number');
      return [name, isDate ? (isoFromSerial(value as number) ?? value) : value];
    });
    yield { row, values: Object.fromEntries(pairs) };
  }
}
