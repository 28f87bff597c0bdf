import type { Sheet } from '../../book/model.ts';
import { dayColumn } from '../../book/roles/day-column.ts';
import { athleteIn } from '../athlete-in.ts';
import type { ReadContext } from '../open-book.ts';
import { absentFrom, chosenColumns, columnFor } from './figure-lifter.ts';

/** Lengths of the body: a sheet with a column for one of them is about builds, and says itself what it lacks. */
const LENGTHS = ['femur', 'tibia', 'trunk'];

/** Rows of one sheet that are looked through. */
const MOST = 20_000;

export interface LifterPlace {
  readonly sheet: Sheet;
  readonly row: number;
}

/**
 * Where the lifter of a row was measured: the row itself where its sheet has body lengths, else the latest row of the same
 * athlete in the first sheet that has all that the figure needs. Null where no sheet has.
 */
export function lifterPlace(context: ReadContext, sheet: Sheet, row: number): LifterPlace | null {
  const chosen = chosenColumns(context.book);
  if (LENGTHS.some((length) => columnFor(sheet, length, chosen))) return { sheet, row };
  const name = athleteIn(context, sheet, row)?.toLowerCase();
  if (name === undefined) return null;
  for (const other of context.book.sheets) {
    if (other.id === sheet.id || absentFrom(context.book, other).length > 0) continue;
    const dates = dayColumn(other);
    let latest: { row: number; day: number } | null = null;
    for (let at = 0; at < Math.min(other.rows, MOST); at++) {
      if (athleteIn(context, other, at)?.toLowerCase() !== name) continue;
      const value = dates ? context.calculation.value(other.id, dates.id, at) : null;
      const day = typeof value === 'number' ? value : Number.NEGATIVE_INFINITY;
      if (latest === null || day > latest.day) latest = { row: at, day };
    }
    if (latest) return { sheet: other, row: latest.row };
  }
  return null;
}
