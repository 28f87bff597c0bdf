/** Frames of squats on film: which rows belong to one repetition of one lifter on one day. */

import { columnInRole } from '../../book/roles/column-in-role.ts';
import { dayColumn } from '../../book/roles/day-column.ts';
import type { ReadContext } from '../open-book.ts';
import type { Read } from './read.ts';

export interface Frame {
  readonly row: number;
  readonly group: number;
  /** Serial day; NaN where the row has none. */
  readonly day: number;
  /** Number of the repetition; NaN where the row has none. */
  readonly repetition: number;
  /** Seconds; the row's place where the sheet says no time. */
  readonly time: number;
  /** Degrees above parallel; NaN where the row has none. */
  readonly depth: number;
}

/** The rows in which all measures of the chart have a value. */
export function framesOf(read: Read, { calculation }: ReadContext): readonly Frame[] {
  const { sheet } = read;
  const reader = (id: string | undefined) => (row: number) => {
    const value = id === undefined ? null : calculation.value(sheet.id, id, row);
    return typeof value === 'number' ? value : Number.NaN;
  };
  const day = reader(dayColumn(sheet)?.id);
  const repetition = reader(columnInRole(sheet, 'repetition')?.id);
  const time = reader(columnInRole(sheet, 'frame_time')?.id);
  const depth = reader(columnInRole(sheet, 'depth')?.id);
  return [...read.rows].flatMap((row): Frame[] => {
    const group = read.groupOf[row]!;
    if (group < 0 || read.measures.some(({ values }) => Number.isNaN(values[row]!))) return [];
    const at = time(row);
    return [
      {
        row,
        group,
        day: day(row),
        repetition: repetition(row),
        time: Number.isNaN(at) ? row : at,
        depth: depth(row),
      },
    ];
  });
}

/** Frames by whatever tells them apart, in the order in which they are met. */
export function apart(
  frames: readonly Frame[],
  key: (frame: Frame) => string,
): readonly (readonly Frame[])[] {
  const found = new Map<string, Frame[]>();
  for (const frame of frames) {
    const own = key(frame);
    const known = found.get(own);
    if (known) known.push(frame);
    else found.set(own, [frame]);
  }
  return [...found.values()];
}
