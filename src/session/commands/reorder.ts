import type { LiveBook } from '../../book/book.ts';
import type { Edit } from '../../book/edit.ts';
import { followReferences } from '../follow-references.ts';
import { together } from './shared.ts';

/** The edit that puts rows in another order (new row i is old row `order[i]`), with the addresses following. */
export function reordered(book: LiveBook, sheet: string, order: Int32Array): Edit {
  const to = new Int32Array(order.length);
  for (let i = 0; i < order.length; i++) to[order[i]!] = i;
  const rewritten = followReferences(book, {
    is: 'move-rows',
    sheet,
    rows: (r) => (r < to.length ? to[r] : r),
  });
  return together([...rewritten.edits, { do: 'order-rows', sheet, order }]);
}
