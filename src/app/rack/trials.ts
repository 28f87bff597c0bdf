/**
 * Trials of one measure in one cell: a single trial is a plain number; of two or three the cell has the mean as its own
 * formula, so that the trials stay in the book.
 */

import type { Column } from '../../book/model.ts';
import type { Locale } from '../../units/locale.ts';
import { editText, readQuantity } from '../../units/quantity.ts';
import { displayUnitOf } from '../../units/unit.ts';

export const TRIALS = 3;

type Measured = Pick<Column, 'kind' | 'dimension' | 'unit'>;

const MEAN = /^=\s*AVERAGE\(([-+\d.eE,\s]+)\)\s*$/i;

/** The trials that a cell has, as they are typed; null for a cell with a formula of another kind. */
export function trialsOf(text: string, column: Measured, locale: Locale): readonly string[] | null {
  if (!text.startsWith('=')) return text.trim() === '' ? [] : [text];
  const values = MEAN.exec(text)?.[1]?.split(',').map(Number);
  if (!values || values.length > TRIALS || values.some((value) => !Number.isFinite(value))) return null;
  return values.map((value) => editText(value, displayUnitOf(column), locale));
}

export interface Entered {
  /** What is written into the cell; undefined where a trial is not a number. */
  readonly text?: string;
  /** The mean in the column's unit; null without a trial. */
  readonly mean: number | null;
  /** Why the trial at this place cannot be read. */
  readonly problem?: { readonly at: number; readonly sentence: string };
}

/** What a cell gets for the trials that are typed. */
export function enteredFrom(trials: readonly string[], column: Measured, locale: Locale): Entered {
  const unit = displayUnitOf(column);
  const values: number[] = [];
  for (const [at, text] of trials.entries()) {
    if (text.trim() === '') continue;
    const read = readQuantity(text.trim(), unit, locale);
    if ('reason' in read) return { mean: null, problem: { at, sentence: read.reason } };
    values.push(read.value);
  }
  const [only, ...more] = values;
  if (only === undefined) return { text: '', mean: null };
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const shown = Number(editText(mean, unit, { decimal: '.' }));
  return {
    text: more.length === 0 ? editText(only, unit, locale) : `=AVERAGE(${values.map(plain).join(', ')})`,
    mean: shown,
  };
}

/** A number as formulas write it: fifteen figures, no rest of a conversion. */
const plain = (value: number): string => String(Number(value.toPrecision(15)));
