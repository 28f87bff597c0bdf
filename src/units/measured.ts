import type { Dimension, Per } from './dimension.ts';
import type { Locale } from './locale.ts';
import { readNumber } from './number.ts';
import { readQuantity } from './quantity.ts';
import { splitRate } from './rate.ts';
import { unitFromWord } from './unit.ts';

/** A number with the unit that was typed behind it; the value is in the base unit. */
export interface Measured {
  readonly value: number;
  readonly dimension?: Dimension;
  readonly unit?: string;
  readonly per?: Per;
}

/** The first word behind a figure. */
const WORD = /\d[.,]?\s*([^\d\s.,+\-−–][^\d]*)/u;

/** Reads `42 cm`, `5 ft 11`, `90 min`, `0.5 kg per week`; undefined for a number alone and for what is none. */
export function readMeasured(typed: string, locale: Locale): Measured | undefined {
  const { text, per } = splitRate(typed.trim());
  const rate = per === undefined ? {} : { per };
  const plain = readNumber(text, locale);
  if (plain !== undefined) return per === undefined ? undefined : { value: plain, ...rate };
  const word = WORD.exec(text)?.[1];
  const unit = word === undefined ? undefined : unitFromWord(word);
  if (!unit) return undefined;
  const read = readQuantity(text, unit, locale);
  return 'value' in read
    ? { value: read.value, dimension: unit.dimension, unit: unit.unit, ...rate }
    : undefined;
}
