import type { z } from '../../book/zod.ts';
import { addColumn } from './add-column.ts';
import { addSheet } from './add-sheet.ts';
import { clearCells } from './clear-cells.ts';
import type { CommandRecord } from './define.ts';
import { nameCell } from './name-cell.ts';
import { releaseCells } from './release-cells.ts';
import { setCells } from './set-cells.ts';
import { setFormula } from './set-formula.ts';
import { setPart } from './set-part.ts';
import { setTitle } from './set-title.ts';

const records = [
  setCells,
  clearCells,
  setFormula,
  releaseCells,
  addColumn,
  addSheet,
  nameCell,
  setTitle,
  setPart,
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
