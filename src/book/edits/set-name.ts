/** The edit that gives a cell a name, or takes it away; undone by what was. */
import { columnOf, type LiveBook, sheetOf } from '../book.ts';
import type { Applied, EditOf } from '../edit.ts';
import { limits } from '../file-frame.ts';
import { nameKey } from '../names.ts';
import { refuse } from '../refusal.ts';
import { checkCount, checkName } from './limits.ts';

export function setName(book: LiveBook, edit: EditOf<'set-name'>): Applied {
  const key = nameKey(edit.name);
  const before = book.names.get(key);
  if (edit.target === null) book.names.delete(key);
  else {
    const sheet = sheetOf(book, edit.target.sheet);
    columnOf(sheet, edit.target.column);
    if (!(edit.target.row >= 0 && edit.target.row < sheet.rows))
      refuse(`The sheet "${sheet.name}" has no row ${edit.target.row + 1}.`);
    checkName({ name: edit.name, ...edit.target });
    checkCount(book.names.size + (before ? 0 : 1), limits.names, 'settings');
    book.names.set(key, { name: edit.name, ...edit.target });
  }
  const { name = edit.name, ...target } = before ?? {};
  return {
    inverse: { do: 'set-name', name, target: before ? (target as typeof before) : null },
    changes: [{ what: 'names' }],
  };
}
