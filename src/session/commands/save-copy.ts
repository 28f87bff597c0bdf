/** The command that saves a small copy of a row's picture in the book, or removes it. */
import { sheetOf } from '../../book/book.ts';
import { refuse } from '../../book/refusal.ts';
import { columnInRole } from '../../book/roles/column-in-role.ts';
import { z } from '../../book/zod.ts';
import { pictureCopy } from '../picture/copy.ts';
import { copyKey } from '../picture/copy-key.ts';
import { defineCommand } from './define.ts';
import { row, sheetId } from './shared.ts';

/** The picture is the one that the row names by its fingerprint and frame time. */
export const saveCopy = defineCommand({
  id: 'save-copy',
  schema: z.strictObject({ sheet: sheetId, row, copy: pictureCopy.nullable() }),
  plan(state, { sheet: id, row: at, copy }) {
    const sheet = sheetOf(state.book, id);
    const value = (role: string) => {
      const column = columnInRole(sheet, role);
      return column && at < sheet.rows ? state.calculation.value(id, column.id, at) : null;
    };
    const [hash, time] = [value('picture_sha256'), value('frame_time')];
    if (typeof hash !== 'string' || hash === '')
      refuse(`Row ${at + 1} names no picture. Save its points first.`);
    const key = copyKey(hash, typeof time === 'number' ? time : null);
    if (!copy && !state.book.parts.pictures.has(key)) refuse('The book has no copy of this picture.');
    return {
      edit: { do: 'set-part', part: 'pictures', key, value: copy },
      words: copy ? 'Save a copy of the picture' : 'Remove the copy of the picture',
    };
  },
});
