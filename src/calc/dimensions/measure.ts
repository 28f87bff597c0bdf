import { type Dimension, dimensions, type Per } from '../../units/dimension.ts';

/**
 * What a number in a formula measures: a product of dimensions with exponents (none: a plain number), a written number
 * that takes whatever is asked of it, or unknown.
 */
export type Measure = 'any' | 'unknown' | Exponents;
export type Exponents = Readonly<Partial<Record<Part, number>>>;

/**
 * What a measure is made of: the dimensions, `day` and `week` (of rates: a rate per week is never one per day), and
 * `date`, a day of the calendar, which only stands alone.
 */
export type Part = Dimension | Per | 'date';
export const plain: Exponents = {};

export const isKnown = (measure: Measure): measure is Exponents => typeof measure === 'object';

export const aDate: Exponents = { date: 1 };

export const isDate = (measure: Measure): boolean => isKnown(measure) && measure.date === 1;

const keys = (of: Exponents): readonly Part[] =>
  (Object.keys(of) as Part[]).filter((d) => of[d] !== 0).sort();

export const equal = (a: Exponents, b: Exponents): boolean => {
  const [left, right] = [keys(a), keys(b)];
  return left.length === right.length && left.every((d, i) => d === right[i] && a[d] === b[d]);
};

const isRate = (measure: Measure): boolean =>
  isKnown(measure) && (measure.day !== undefined || measure.week !== undefined);

/** a · b^power. Days and weeks are plain numbers elsewhere, so a rate times a number may be a rate no longer. */
export function times(a: Measure, b: Measure, power = 1): Measure {
  if (a === 'unknown' || b === 'unknown' || isDate(a) || isDate(b)) return 'unknown';
  if (isRate(a) !== isRate(b) && [a, b].some((one) => !isKnown(one) || equal(one, plain))) return 'unknown';
  const product: Partial<Record<Part, number>> = isKnown(a) ? { ...a } : {};
  if (isKnown(b)) for (const d of keys(b)) product[d] = (product[d] ?? 0) + power * b[d]!;
  return product;
}

/** The dimension itself, where the measure is exactly one. */
export function dimensionIn(measure: Measure): Dimension | undefined {
  if (!isKnown(measure)) return undefined;
  const [only, more] = keys(measure);
  return only !== undefined && more === undefined && measure[only] === 1 && only in dimensions
    ? (only as Dimension)
    : undefined;
}

/** A dimension, or a plain number, per day or per week. */
export interface Rate {
  readonly dimension?: Dimension;
  readonly per: Per;
}

export const perSpan = (measure: Measure, per: Per): Measure =>
  isKnown(measure) && !isDate(measure) ? { ...measure, [per]: (measure[per] ?? 0) - 1 } : 'unknown';

/** What something measures that says it of itself; undefined where it says nothing. */
export function declaredMeasure({
  dimension,
  per,
}: {
  readonly dimension?: Dimension;
  readonly per?: Per;
}): Exponents | undefined {
  if (dimension === undefined && per === undefined) return undefined;
  return { ...(dimension ? { [dimension]: 1 } : {}), ...(per ? { [per]: -1 } : {}) };
}

export function rateIn(measure: Measure): Rate | undefined {
  if (!isKnown(measure)) return undefined;
  for (const per of ['day', 'week'] as const) {
    if (measure[per] !== -1) continue;
    const { [per]: _, ...rest } = measure;
    if (equal(rest, plain)) return { per };
    const dimension = dimensionIn(rest);
    if (dimension) return { dimension, per };
  }
  return undefined;
}

/** In words for a sentence: `a length (cm)`, `a plain number`, `length² / mass`. */
export function inWords(measure: Exponents): string {
  const all = keys(measure);
  if (all.length === 0) return 'a plain number';
  const one = dimensionIn(measure);
  if (one) return `${one === 'angle' ? 'an' : 'a'} ${one} (${dimensions[one]})`;
  if (isDate(measure)) return 'a date';
  const rate = rateIn(measure);
  if (rate?.dimension)
    return `${rate.dimension === 'angle' ? 'an' : 'a'} ${rate.dimension} per ${rate.per} (${dimensions[rate.dimension]} per ${rate.per})`;
  if (rate) return `a number per ${rate.per}`;
  const power = (d: Part): string => {
    const e = Math.abs(measure[d]!);
    return e === 1 ? d : `${d}^${e}`;
  };
  const above = all.filter((d) => measure[d]! > 0).map(power);
  const below = all.filter((d) => measure[d]! < 0).map(power);
  return `${above.join(' · ') || '1'}${below.length > 0 ? ` / ${below.join(' / ')}` : ''}`;
}
