/** Unreadable cells of a sheet by column, text and reason, so that all of a group can be settled at once. */
import { sheetOf } from '../../book/book.ts';
import type { Cells } from '../../book/cells.ts';
import type { Book } from '../../book/model.ts';

export interface UnreadableGroup {
  /** Id. */
  readonly column: string;
  readonly text: string;
  readonly reason: string;
  /** Rows of the sheet from 0, in order. */
  readonly rows: readonly number[];
}

/** Groups that are told, the most frequent first. */
const MOST = 500;

export interface UnreadableCells {
  /** Cells in all. */
  readonly count: number;
  readonly groups: readonly UnreadableGroup[];
  /** Groups beyond those told. */
  readonly more: number;
}

/** @throws Refusal when there is no such sheet */
export function unreadableCells(book: Book, id: string): UnreadableCells {
  const sheet = sheetOf(book, id);
  let count = 0;
  const groups = sheet.columns.flatMap((column) => {
    const found = new Map<string, { text: string; reason: string; rows: number[] }>();
    for (const [row, { held: text, reason }] of sheet.cells.get(column.id)!.held) {
      count++;
      const key = `${text}\u0000${reason}`;
      const known = found.get(key);
      if (known) known.rows.push(row);
      else found.set(key, { text, reason, rows: [row] });
    }
    return [...found.values()].map(({ rows, ...rest }): UnreadableGroup => {
      return { column: column.id, ...rest, rows: rows.sort((a, b) => a - b) };
    });
  });
  groups.sort((a, b) => b.rows.length - a.rows.length);
  return { count, groups: groups.slice(0, MOST), more: Math.max(0, groups.length - MOST) };
}

/** The rows of one group. */
export const rowsUnreadable = ({ held }: Cells, text: string, reason: string): number[] =>
  [...held]
    .filter(([, one]) => one.held === text && one.reason === reason)
    .map(([row]) => row)
    .sort((a, b) => a - b);
