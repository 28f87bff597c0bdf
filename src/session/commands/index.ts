/** All commands of a session. */
import type { z } from '../../book/zod.ts';
import { acceptDoubt } from './accept-doubt.ts';
import { addColumn } from './add-column.ts';
import { addRows } from './add-rows.ts';
import { addSheet } from './add-sheet.ts';
import { changeColumn } from './change-column.ts';
import { changeSheet } from './change-sheet.ts';
import { clearCells } from './clear-cells.ts';
import type { CommandRecord } from './define.ts';
import { duplicateColumn } from './duplicate-column.ts';
import { duplicateSheet } from './duplicate-sheet.ts';
import { fill } from './fill.ts';
import { moveColumn } from './move-column.ts';
import { moveRows } from './move-rows.ts';
import { moveSheet } from './move-sheet.ts';
import { nameCell } from './name-cell.ts';
import { pasteText } from './paste-text.ts';
import { readUnreadable } from './read-unreadable.ts';
import { releaseCells } from './release-cells.ts';
import { removeColumn } from './remove-column.ts';
import { removeCopies } from './remove-copies.ts';
import { removeName } from './remove-name.ts';
import { removeRows } from './remove-rows.ts';
import { removeSheet } from './remove-sheet.ts';
import { renameName } from './rename-name.ts';
import { replaceText } from './replace-text.ts';
import { saveCopy } from './save-copy.ts';
import { savePoints } from './save-points.ts';
import { setCells } from './set-cells.ts';
import { setFormula } from './set-formula.ts';
import { setMarks } from './set-marks.ts';
import { setPart } from './set-part.ts';
import { setTitle } from './set-title.ts';
import { sortRows } from './sort-rows.ts';

const records = [
  setCells,
  savePoints,
  saveCopy,
  removeCopies,
  pasteText,
  clearCells,
  fill,
  replaceText,
  setFormula,
  releaseCells,
  addRows,
  removeRows,
  moveRows,
  sortRows,
  addColumn,
  duplicateColumn,
  removeColumn,
  moveColumn,
  changeColumn,
  addSheet,
  duplicateSheet,
  removeSheet,
  moveSheet,
  changeSheet,
  nameCell,
  renameName,
  removeName,
  setTitle,
  setMarks,
  setPart,
  acceptDoubt,
  readUnreadable,
] as const;

type AnyRecord = (typeof records)[number];
type CommandOf<R> = R extends CommandRecord<infer K, infer P> ? { readonly do: K } & Readonly<P> : never;

/** Everything that a user can do to a book, as a record that can be posted. */
export type Command = CommandOf<AnyRecord>;

/** A command whose payload type is forgotten: its schema checks it. */
export interface LooseRecord {
  readonly id: string;
  readonly schema: z.ZodType;
  readonly plan: (
    ...args: Parameters<CommandRecord<string, unknown>['plan']>
  ) => ReturnType<AnyRecord['plan']>;
}

/** All commands by id. */
export const commands: ReadonlyMap<string, LooseRecord> = new Map(
  records.map((record) => [record.id, record as unknown as LooseRecord]),
);
