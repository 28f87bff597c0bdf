import { isIssue } from '../../../functions/core/issue.ts';
import { isMatrix, Kind, type Matrix, type Range, type Value } from '../../../functions/core/value.ts';
import type { Column } from '../../book/model.ts';
import type { Locale } from '../../units/locale.ts';
import { writeNumber } from '../../units/number.ts';
import { displayUnitOf, fromBase } from '../../units/unit.ts';
import { displayOf } from './display.ts';

/** A figure with five significant digits and its unit: enough to follow a working, short enough to read. */
export function figureText(value: number, unit: string, locale: Locale): string {
  const rounded = Math.abs(value) >= 1e5 ? Math.round(value) : Number(value.toPrecision(5));
  const text = writeNumber(rounded, {}, locale).replace('-', '−');
  if (unit === '') return text;
  return unit === 'deg' ? `${text}°` : `${text} ${unit}`;
}

/** A value of a column, in the column's unit. */
export function valueText(value: Value, column: Column | undefined, locale: Locale): string {
  if (value === null) return 'blank';
  if (isIssue(value)) return value.code;
  if (typeof value === 'string') return `"${value}"`;
  if (typeof value !== 'number' || column?.kind === 'date')
    return column ? displayOf(value, column, locale) : value ? 'yes' : 'no';
  const unit = column ? displayUnitOf(column) : undefined;
  return figureText(fromBase(value, unit), unit?.unit ?? '', locale);
}

/** What a formula came to, whatever it is; a number in the unit given. */
export function outcomeText(value: Value | Matrix, unit: string, locale: Locale): string {
  if (isMatrix(value)) return `a table of ${value.rows} × ${value.columns}`;
  return typeof value === 'number' ? figureText(value, unit, locale) : valueText(value, undefined, locale);
}

/** How many values a column holds, in words. */
export function countText({ kinds }: Range): string {
  let filled = 0;
  for (const kind of kinds) if (kind !== Kind.blank) filled++;
  return `${filled} ${filled === 1 ? 'value' : 'values'}`;
}
