/** The edit that puts rows into another order; undone by the order before. */
import { type LiveBook, sheetOf } from '../book.ts';
import type { Applied, EditOf } from '../edit.ts';
import { refuse } from '../refusal.ts';
import { moveNames } from './shared.ts';

export function orderRows(book: LiveBook, edit: EditOf<'order-rows'>): Applied {
  const sheet = sheetOf(book, edit.sheet);
  const back = inverseOrder(edit.order, sheet.rows);
  for (const cells of sheet.cells.values()) if (!cells.blank) cells.order(edit.order);
  const names = moveNames(book, sheet.id, ({ row }) => back[row]);
  return {
    inverse: { do: 'order-rows', sheet: edit.sheet, order: back },
    changes: [{ what: 'rows', sheet: edit.sheet, from: 0 }, ...names.changes],
  };
}

/** Where each old row goes; refuses what is no order of all rows. */
function inverseOrder(order: ArrayLike<number>, rows: number): Int32Array {
  if (order.length !== rows) refuse(`An order of ${order.length} rows was given for ${rows}.`);
  const back = new Int32Array(rows).fill(-1);
  for (let i = 0; i < rows; i++) {
    const from = order[i]!;
    if (!Number.isInteger(from) || from < 0 || from >= rows || back[from] !== -1)
      refuse('An order of rows has to name every row once.');
    back[from] = i;
  }
  return back;
}
