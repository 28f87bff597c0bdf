import { isIssue } from '../../../functions/core/issue.ts';
import { isMatrix, type Value } from '../../../functions/core/value.ts';
import { columnNamed, columnOf, sheetOf } from '../../book/book.ts';
import type { Column, Sheet } from '../../book/model.ts';
import { nameKey } from '../../book/names.ts';
import { cellRoleOf } from '../../book/roles/cell-in-role.ts';
import { roleOf } from '../../book/roles/column-in-role.ts';
import { writeNumber } from '../../units/number.ts';
import { signOf } from '../../units/sign.ts';
import { displayUnitOf, fromBase } from '../../units/unit.ts';
import type { ReadContext } from '../open-book.ts';
import { headingUnit } from '../text/column-unit.ts';
import { displayOf, wayOf } from '../text/display.ts';
import { placePattern } from './handout-settings.ts';

/** A value as a person reads it: whole degrees, else as its column shows it, with the unit. Null when there is none. */
export function readable(
  value: Value,
  column: Column,
  context: ReadContext,
  unit: string = signOf(column),
): string | null {
  if (value === null || value === '' || isIssue(value)) return null;
  if (unit === '°' && typeof value === 'number') return `${minus(Math.round(value))}°`;
  const text = displayOf(value, column, context.locale).replace(/^-/, '−');
  return unit && typeof value === 'number' && column.kind === 'number' ? `${text} ${unit}` : text;
}

const minus = (value: number): string => (value < 0 ? `−${-value}` : String(Math.abs(value)));

/** "± 1 cm", "± 3°": an error in the column's unit, at least one degree for angles. Empty when there is none. */
export function errorWords(error: number | null, column: Column, context: ReadContext): string {
  if (error === null || !Number.isFinite(error) || error <= 0) return '';
  if (column.dimension === 'angle') return `± ${Math.max(1, Math.round(error))}°`;
  const unit = displayUnitOf(column);
  const sign = signOf(column);
  const shown = Number(fromBase(error, unit).toPrecision(2));
  return `± ${writeNumber(shown, {}, context.locale)}${sign ? ` ${sign}` : ''}`;
}

/** A formula's number in a row; null for anything else. */
export function numberIn(context: ReadContext, formula: string, sheet: Sheet, row: number): number | null {
  const value = valueIn(context, formula, sheet, row);
  return typeof value === 'number' ? value : null;
}

/** A formula's value in a row of a sheet, as if it stood there. */
export function valueIn(context: ReadContext, formula: string, sheet: Sheet, row: number): Value {
  const value = context.calculation.evaluate(formula, { sheet: sheet.id, column: sheet.columns[0]!.id, row });
  return isMatrix(value) ? null : value;
}

/** The names in a sentence's {places}. */
export const placesOf = (say: string): readonly string[] =>
  [...say.matchAll(placePattern)].map((found) => found[1]!.trim());

/** The names in a sentence's {places} that are neither a column of the sheet nor a named cell. */
export function unknownPlaces(context: ReadContext, say: string, sheet: Sheet): readonly string[] {
  return placesOf(say).filter((name) => !columnNamed(sheet, name) && !context.book.names.has(nameKey(name)));
}

/** A sentence with its {places} filled for a row; null when one of them has no value there. */
export function filled(context: ReadContext, say: string, sheet: Sheet, row: number): string | null {
  let complete = true;
  const text = say.replace(placePattern, (_, inner: string) => {
    const words = wordsFor(context, inner.trim(), sheet, row);
    complete &&= words !== null;
    return words ?? '';
  });
  return complete ? text : null;
}

function wordsFor(context: ReadContext, name: string, sheet: Sheet, row: number): string | null {
  const { book, calculation } = context;
  const column = columnNamed(sheet, name);
  if (column)
    return readable(
      calculation.value(sheet.id, column.id, row),
      column,
      context,
      headingUnit(context, sheet.id, column),
    );
  const named = book.names.get(nameKey(name));
  if (!named) return null;
  const value = calculation.value(named.sheet, named.column, named.row);
  // A named angle stands in a column without a unit: it reads like the column of the same kind that it is compared with.
  const own = columnOf(sheetOf(book, named.sheet), named.column);
  const meaning = own.dimension ? undefined : calculation.meaning(named.sheet, named.column, named.row);
  if (meaning) return readable(value, wayOf(own, meaning).column, context);
  const like = own.dimension === undefined ? likeOf(cellRoleOf(named), sheet) : undefined;
  return readable(value, like ?? own, context);
}

/** The column whose name ends a named cell's name: target_lean reads like lean, max_lift like lift. */
const likeOf = (name: string, sheet: Sheet): Column | undefined =>
  sheet.columns.find((column) => nameKey(name).endsWith(`_${roleOf(column)}`));
