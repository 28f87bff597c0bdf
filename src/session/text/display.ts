import type { Value } from '../../../functions/core/value.ts';
import { Kind, type Range } from '../../../functions/core/value.ts';
import type { Column } from '../../book/model.ts';
import type { Meaning } from '../../calc/api.ts';
import { writeDate } from '../../units/date.ts';
import type { Locale } from '../../units/locale.ts';
import { writeNumber } from '../../units/number.ts';
import { writeQuantity } from '../../units/quantity.ts';
import { displayUnitOf } from '../../units/unit.ts';
import { writeYesNo } from '../../units/yes-no.ts';

/** Writes the cells of one column as the grid shows them. Made once for many rows. */
export function writer(column: Column, locale: Locale): (range: Range, row: number) => string {
  const unit = displayUnitOf(column);
  const style = column.format ?? {};
  const quantity = column.kind === 'number';
  return (range, row) => {
    switch (range.kinds[row]) {
      case Kind.number: {
        const value = range.numbers[row]!;
        if (column.kind === 'date') return writeDate(value);
        return quantity ? writeQuantity(value, unit, style, locale) : writeNumber(value, style, locale);
      }
      case Kind.date:
        return writeDate(range.numbers[row]!);
      case Kind.yesNo:
        return writeYesNo(range.numbers[row] !== 0);
      case Kind.text:
        return range.texts?.[row] ?? '';
      case Kind.error:
        return range.errors?.[row]?.code ?? '#ERROR!';
      default:
        return '';
    }
  };
}

/** A column's way of writing, and what a cell of it says of its own number. */
export interface Way {
  readonly column: Column;
  /** Stands behind a number, where the heading cannot say it. */
  readonly behind: string;
}

/** How a cell is written whose formula says what its number stands for; without a meaning, as its column says. */
export function wayOf(column: Column, meaning: Meaning | undefined): Way {
  if (!meaning || column.kind !== 'number' || column.format?.percent) return { column, behind: '' };
  if (meaning.is === 'date') return { column: { ...column, kind: 'date' }, behind: '' };
  const { dimension, unit } = meaning;
  const sign = unit === undefined ? '' : unit === 'deg' ? '°' : ` ${unit}`;
  return {
    column: {
      ...column,
      ...(dimension && unit ? { dimension, unit } : {}),
      ...(meaning.is === 'rate' ? { per: meaning.per } : {}),
    },
    behind: meaning.is === 'rate' ? `${sign} per ${meaning.per}` : sign,
  };
}

/** One value as its cell shows it, with the unit that its column does not say. */
export function shownWith(value: Value, { column, behind }: Way, locale: Locale): string {
  const text = displayOf(value, column, locale);
  return typeof value === 'number' && column.kind === 'number' ? text + behind : text;
}

/** One value as a column shows it. */
export function displayOf(value: Value, column: Column, locale: Locale): string {
  if (value === null) return '';
  if (typeof value === 'number') {
    if (column.kind === 'date') return writeDate(value);
    return column.kind === 'number'
      ? writeQuantity(value, displayUnitOf(column), column.format ?? {}, locale)
      : writeNumber(value, column.format ?? {}, locale);
  }
  if (typeof value === 'boolean') return writeYesNo(value);
  return typeof value === 'string' ? value : value.code;
}
