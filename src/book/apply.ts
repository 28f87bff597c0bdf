/** Applies an edit to a book, whatever it is. */
import type { LiveBook } from './book.ts';
import type { Applied, Change, Edit, EditOf } from './edit.ts';
import { addColumn } from './edits/add-column.ts';
import { addRows } from './edits/add-rows.ts';
import { addSheet } from './edits/add-sheet.ts';
import { changeColumn } from './edits/change-column.ts';
import { changeSheet } from './edits/change-sheet.ts';
import { moveColumn } from './edits/move-column.ts';
import { moveSheet } from './edits/move-sheet.ts';
import { orderRows } from './edits/order-rows.ts';
import { putCells } from './edits/put-cells.ts';
import { removeColumn } from './edits/remove-column.ts';
import { removeRows } from './edits/remove-rows.ts';
import { removeSheet } from './edits/remove-sheet.ts';
import { setName } from './edits/set-name.ts';
import { setPart } from './edits/set-part.ts';
import { setTitle } from './edits/set-title.ts';

type Appliers = { readonly [K in Edit['do']]: (book: LiveBook, edit: EditOf<K>) => Applied };

const appliers: Appliers = {
  'put-cells': putCells,
  'add-rows': addRows,
  'remove-rows': removeRows,
  'order-rows': orderRows,
  'add-column': addColumn,
  'remove-column': removeColumn,
  'move-column': moveColumn,
  'change-column': changeColumn,
  'add-sheet': addSheet,
  'remove-sheet': removeSheet,
  'move-sheet': moveSheet,
  'change-sheet': changeSheet,
  'set-name': setName,
  'set-part': setPart,
  'set-title': setTitle,
  batch: applyBatch,
};

/**
 * Changes the book and answers the edit that takes the change back and what was touched. All or nothing: an edit that
 * cannot be done leaves the book as it was. @throws Refusal
 */
export function applyEdit(book: LiveBook, edit: Edit): Applied {
  const applier = appliers[edit.do] as (book: LiveBook, edit: Edit) => Applied;
  return applier(book, edit);
}

function applyBatch(book: LiveBook, { edits }: EditOf<'batch'>): Applied {
  const inverses: Edit[] = [];
  const changes: Change[] = [];
  try {
    for (const edit of edits) {
      const applied = applyEdit(book, edit);
      inverses.push(applied.inverse);
      for (const change of applied.changes) changes.push(change);
    }
  } catch (error) {
    for (const inverse of inverses.reverse()) applyEdit(book, inverse);
    throw error;
  }
  return { inverse: { do: 'batch', edits: inverses.reverse() }, changes: asOfNow(book, changes) };
}

/**
 * The changes of a batch as they lie in the book after it: where rows came, went or changed places below a row, or a
 * column or sheet is gone, what its cells went through before says nothing more.
 */
function asOfNow(book: LiveBook, changes: readonly Change[]): Change[] {
  const moved = new Map<string, number>();
  for (const change of changes)
    if (change.what === 'rows')
      moved.set(change.sheet, Math.min(change.from, moved.get(change.sheet) ?? change.from));
  return changes.flatMap((change): Change[] => {
    if (change.what === 'sheets' || change.what === 'names' || change.what === 'part') return [change];
    const sheet = book.sheets.find((s) => s.id === change.sheet);
    if (!sheet) return [];
    if (change.what === 'rows') return change.from === moved.get(change.sheet) ? [change] : [];
    if (change.what === 'columns') return [change];
    const to = Math.min(change.to, moved.get(change.sheet) ?? change.to);
    return change.from < to && sheet.cells.has(change.column) ? [{ ...change, to }] : [];
  });
}
