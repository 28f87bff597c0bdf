import { Kind, type Range } from '../../../functions/core/value.ts';
import { sheetOf } from '../../book/book.ts';
import { z } from '../../book/zod.ts';
import { defineCommand } from './define.ts';
import { reordered } from './reorder.ts';
import { columnId, columnsById, sheetId } from './shared.ts';

/** Puts the rows themselves in order, by one column or by several; rows that are equal in all keep their order. */
export const sortRows = defineCommand({
  id: 'sort-rows',
  schema: z.strictObject({
    sheet: sheetId,
    by: z.array(z.strictObject({ column: columnId, descending: z.boolean().optional() })).min(1),
  }),
  plan(state, { sheet: id, by }) {
    const sheet = sheetOf(state.book, id);
    const columns = columnsById(
      sheet,
      by.map((b) => b.column),
    );
    const keys = by.map(({ column, descending = false }) =>
      comparison(state.calculation.column(id, column), descending),
    );
    const order = Int32Array.from({ length: sheet.rows }, (_, i) => i).sort((a, b) => {
      for (const compare of keys) {
        const difference = compare(a, b);
        if (difference !== 0) return difference;
      }
      return a - b;
    });
    return {
      edit: reordered(state.book, id, order),
      words: `Sort by ${columns.map((c) => c.label).join(', ')}`,
    };
  },
});

/** Order of the kinds: numbers and dates, texts, no and yes, errors; blanks are last in either direction. */
const RANK: Readonly<Record<number, number>> = {
  [Kind.number]: 0,
  [Kind.date]: 0,
  [Kind.text]: 1,
  [Kind.yesNo]: 2,
  [Kind.error]: 3,
  [Kind.blank]: 4,
};
const words = new Intl.Collator('en', { sensitivity: 'base', numeric: true });

function comparison(range: Range, descending: boolean): (a: number, b: number) => number {
  const { kinds, numbers, texts } = range;
  return (a, b) => {
    const ranks = RANK[kinds[a]!]! - RANK[kinds[b]!]!;
    if (kinds[a] === Kind.blank || kinds[b] === Kind.blank) return ranks;
    const up =
      ranks !== 0
        ? ranks
        : kinds[a] === Kind.text
          ? words.compare(texts?.[a] ?? '', texts?.[b] ?? '')
          : kinds[a] === Kind.error
            ? 0
            : numbers[a]! - numbers[b]!;
    return descending ? -up : up;
  };
}
