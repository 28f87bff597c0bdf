import { sheetOf } from '../../book/book.ts';
import { nameKey } from '../../book/names.ts';
import { columnInRole } from '../../book/roles/column-in-role.ts';
import { titleOf } from '../figure/figure-lifter.ts';
import type { ReadContext } from '../open-book.ts';
import { bytesOf, copiesIn, copyOf, type PictureCopy } from './copy.ts';
import { type DigitisedTwice, digitisedTwice } from './digitised-twice.ts';
import { type Observation, PLATE, POINTS, type Spots } from './points.ts';
import { missingColumns } from './stored-columns.ts';

/** What the selected row knows of its picture. */
export interface StoredPicture {
  readonly sheet: string;
  readonly row: number;
  readonly title: string;
  /** Columns for points that the sheet lacks, by label; points can be saved only without any. */
  readonly missing: readonly string[];
  /** The points that the row has; null where it has none. */
  readonly seen: Observation | null;
  /** Rows of the sheet whose picture has the fingerprint that was asked about. */
  readonly same: readonly { readonly row: number; readonly time: number | null }[];
  /** The small copy that the book has of the row’s picture; null where nobody asked for one. */
  readonly copy: (PictureCopy & { readonly bytes: number }) | null;
  /** All such copies in the book. */
  readonly copies: { readonly count: number; readonly bytes: number };
  /** The error of placing points, where the sheet has a frame that was digitised again. */
  readonly twice: DigitisedTwice | null;
}

/** The picture's points in a row, as they were saved. @throws Refusal for a sheet that is gone */
export function storedPicture(context: ReadContext, id: string, row: number, hash?: string): StoredPicture {
  const sheet = sheetOf(context.book, id);
  const value = (name: string, at = row) => {
    const column = columnInRole(sheet, name);
    return column && at < sheet.rows ? context.calculation.value(id, column.id, at) : null;
  };
  const number = (name: string, at = row): number | null => {
    const found = value(name, at);
    return typeof found === 'number' ? found : null;
  };
  const text = (name: string): string => {
    const found = value(name);
    return typeof found === 'string' ? found.trim() : '';
  };
  const points: Record<string, { x: number; y: number }> = {};
  for (const { id: point } of POINTS) {
    const [x, y] = [number(`${point}_x`), number(`${point}_y`)];
    if (x !== null && y !== null) points[point] = { x, y };
  }
  const copy = copyOf(context.book, text('picture_sha256'), number('frame_time'));
  const same = [];
  if (hash)
    for (let at = 0; at < sheet.rows; at++)
      if (value('picture_sha256', at) === hash) same.push({ row: at, time: number('frame_time', at) });
  return {
    sheet: id,
    row,
    title: titleOf(context, sheet, row),
    missing: missingColumns(sheet),
    seen:
      Object.keys(points).length === 0
        ? null
        : {
            points: points as Spots,
            facing: nameKey(text('facing')) === 'left' ? 'left' : 'right',
            line: nameKey(text('level_line')) === 'plumb' ? 'plumb' : 'floor',
            length: number('known_length') ?? PLATE,
            camera: number('camera_distance'),
            nearer: number('length_nearer') ?? 0,
            file: text('picture'),
            hash: text('picture_sha256'),
            time: number('frame_time'),
          },
    same,
    copy: copy && { ...copy, bytes: bytesOf(copy.jpeg) },
    copies: copiesIn(context.book),
    twice: digitisedTwice(context, sheet),
  };
}
