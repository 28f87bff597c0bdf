import { log10 } from '../../../functions/core/elementary/log.ts';
import { Kind } from '../../../functions/core/value.ts';
import { columnNamed } from '../../book/book.ts';
import type { Book, Column, NamedCell, Sheet } from '../../book/model.ts';
import { nameKey } from '../../book/names.ts';
import { goneName } from '../../book/references/gone.ts';
import { refuse } from '../../book/refusal.ts';
import { writeNumber } from '../../units/number.ts';
import { signOf, unitSign } from '../../units/sign.ts';
import { displayUnitOf, fromBase } from '../../units/unit.ts';
import type { ReadContext } from '../open-book.ts';
import { rowsInView } from '../sheet/row-view.ts';
import { sheetViewOf } from '../sheet/sheet-view.ts';

/** A sheet by id or name. @throws Refusal */
export const sheetFound = ({ sheets }: Book, wanted: string): Sheet =>
  sheets.find(({ id, name }) => id === wanted || nameKey(name) === nameKey(wanted)) ??
  refuse(
    `The report names a sheet "${goneName(wanted)}" that the book does not have. Edit the report contents.`,
  );

/** @throws Refusal */
export const columnFound = (sheet: Sheet, wanted: string): Column =>
  columnNamed(sheet, wanted) ??
  refuse(
    `The report names a column "${goneName(wanted)}" that ${sheet.label} does not have. Edit the report contents.`,
  );

/** The rows that a sheet's filter shows: the report counts what the page and the charts show. */
export function rowsShown(context: ReadContext, sheet: Sheet): Int32Array {
  const where = sheetViewOf(context.book, sheet.id)?.rows?.where;
  return rowsInView(context, sheet.id, where ? { where } : {});
}

/** A column's numbers in those rows, in its display unit; NaN where there is none. */
export function numbersIn(
  context: ReadContext,
  sheet: Sheet,
  column: Column,
  rows: ArrayLike<number>,
): Float64Array {
  const { kinds, numbers } = context.calculation.column(sheet.id, column.id);
  const unit = displayUnitOf(column);
  return Float64Array.from(rows, (row) =>
    kinds[row] === Kind.number ? fromBase(numbers[row]!, unit) : Number.NaN,
  );
}

/** "cm"; blank for a column without a unit. */
export function unitSignOf(column: Column): string {
  return signOf(column);
}

/** "Femur (cm)". */
export function labelled(column: Column): string {
  const unit = unitSignOf(column);
  return unit ? `${column.label} (${unit})` : column.label;
}

/** The unit of a setting: its column's, else what its row says in the column "Unit". */
export function unitOfNamed({ book, calculation }: ReadContext, { sheet, column, row }: NamedCell): string {
  const of = book.sheets.find(({ id }) => id === sheet);
  const own = of?.columns.find(({ id }) => id === column);
  const beside = of?.columns.find(({ label }) => label.toLowerCase() === 'unit');
  if (own && unitSignOf(own) !== '') return unitSignOf(own);
  const told = of && beside && calculation.value(of.id, beside.id, row);
  return typeof told === 'string' ? unitSign(told.trim()) : '';
}

/** A figure with so many digits after the point, a true minus before it; a dash for none. */
export const fixed = (value: number | null, digits: number, { locale }: ReadContext): string =>
  value === null || !Number.isFinite(value) ? '–' : writeNumber(value, { digits }, locale).replace(/^-/, '−');

/** One digit more than the column shows; without a format, three significant ones of the typical size. */
export function digitsFor(column: Column, typical: number): number {
  if (column.format?.digits !== undefined) return Math.min(6, column.format.digits + 1);
  const size = Math.floor(log10(Math.abs(typical) || 1));
  return Math.max(0, Math.min(6, 2 - size));
}
