import { type Dimension, dimensions } from '../../units/dimension.ts';

/**
 * What a number in a formula measures: a product of dimensions with exponents (none: a plain number), a written number
 * that takes whatever is asked of it, or unknown.
 */
export type Measure = 'any' | 'unknown' | Exponents;
export type Exponents = Readonly<Partial<Record<Dimension, number>>>;

export const plain: Exponents = {};

export const isKnown = (measure: Measure): measure is Exponents => typeof measure === 'object';

const keys = (of: Exponents): readonly Dimension[] =>
  (Object.keys(of) as Dimension[]).filter((d) => of[d] !== 0).sort();

export const equal = (a: Exponents, b: Exponents): boolean => {
  const [left, right] = [keys(a), keys(b)];
  return left.length === right.length && left.every((d, i) => d === right[i] && a[d] === b[d]);
};

/** a · b^power */
export function times(a: Measure, b: Measure, power = 1): Measure {
  if (a === 'unknown' || b === 'unknown') return 'unknown';
  const product: Partial<Record<Dimension, number>> = isKnown(a) ? { ...a } : {};
  if (isKnown(b)) for (const d of keys(b)) product[d] = (product[d] ?? 0) + power * b[d]!;
  return product;
}

/** The dimension itself, where the measure is exactly one. */
export function dimensionIn(measure: Measure): Dimension | undefined {
  if (!isKnown(measure)) return undefined;
  const [only, more] = keys(measure);
  return only !== undefined && more === undefined && measure[only] === 1 ? only : undefined;
}

/** In words for a sentence: `a length (cm)`, `a plain number`, `length² / mass`. */
export function inWords(measure: Exponents): string {
  const all = keys(measure);
  if (all.length === 0) return 'a plain number';
  const one = dimensionIn(measure);
  if (one) return `${one === 'angle' ? 'an' : 'a'} ${one} (${dimensions[one]})`;
  const power = (d: Dimension): string => {
    const e = Math.abs(measure[d]!);
    return e === 1 ? d : `${d}^${e}`;
  };
  const above = all.filter((d) => measure[d]! > 0).map(power);
  const below = all.filter((d) => measure[d]! < 0).map(power);
  return `${above.join(' · ') || '1'}${below.length > 0 ? ` / ${below.join(' / ')}` : ''}`;
}
