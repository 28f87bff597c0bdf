import { Kind, type Range } from '../../../functions/core/value.ts';

/** Order of the kinds: numbers and dates, texts, no and yes, errors; blanks, and texts of nothing, are last in either direction. */
const RANK: Readonly<Record<number, number>> = {
  [Kind.number]: 0,
  [Kind.date]: 0,
  [Kind.text]: 1,
  [Kind.yesNo]: 2,
  [Kind.error]: 3,
  [Kind.blank]: 4,
};
const words = new Intl.Collator('en', { sensitivity: 'base', numeric: true });

export type RowComparison = (a: number, b: number) => number;

/** Compares two rows by their values in one column. */
export function byValue({ kinds, numbers, texts }: Range, descending: boolean): RowComparison {
  const kindOf = (row: number): Kind =>
    kinds[row] === Kind.text && !texts?.[row] ? Kind.blank : (kinds[row] as Kind);
  return (a, b) => {
    const [first, second] = [kindOf(a), kindOf(b)];
    const ranks = RANK[first]! - RANK[second]!;
    if (first === Kind.blank || second === Kind.blank) return ranks;
    if (ranks !== 0) return descending ? -ranks : ranks;
    if (first === Kind.error) return 0;
    const up =
      first === Kind.text ? words.compare(texts?.[a] ?? '', texts?.[b] ?? '') : numbers[a]! - numbers[b]!;
    return descending ? -up : up;
  };
}

/** Puts rows in order by several comparisons; rows that are equal in all keep their order. */
export function ordered(rows: Int32Array, by: readonly RowComparison[]): Int32Array {
  return rows.sort((a, b) => {
    for (const compare of by) {
      const difference = compare(a, b);
      if (difference !== 0) return difference;
    }
    return a - b;
  });
}

export const allRows = (count: number): Int32Array => Int32Array.from({ length: count }, (_, i) => i);
