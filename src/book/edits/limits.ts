import type { CellRun } from '../cells.ts';
import { isList } from '../cells.ts';
import type { SheetContent } from '../edit.ts';
import { columnSchema, limits, sheetHeadSchema } from '../file-frame.ts';
import { jsonProblem } from '../json.ts';
import type { Book, Column, Json, NamedCell, Sheet } from '../model.ts';
import { refuse } from '../refusal.ts';
import type { z } from '../zod.ts';

/*
 * What a book may hold is what its file may hold: an edit that would make a book which could be saved and not opened
 * again is refused.
 */

const clipped = (text: string): string => (text.length > 60 ? `${text.slice(0, 60)}…` : text);

/** Refuses a record that a file could not give back. */
function checkRecord(schema: z.ZodType, record: unknown, what: string): void {
  const { error } = schema.safeParse(record);
  if (!error) return;
  const [issue] = error.issues;
  const field = issue?.path.join('.') ?? '';
  refuse(
    `${what}${field ? `: its ${field}` : ''} cannot be saved (${issue?.message ?? 'something unexpected'}). Make it shorter or simpler.`,
  );
}

export const checkColumn = (column: Column): void =>
  checkRecord(columnSchema, column, `The column "${clipped(String(column.label || column.name))}"`);

type SheetHead = Pick<SheetContent, 'id' | 'name' | 'label' | 'purpose' | 'note'> & { readonly rows: number };

export function checkSheet({ id, name, label, purpose, note, rows }: SheetHead): void {
  const head = { id, name, label, purpose, rows, ...(note === undefined ? {} : { note }) };
  checkRecord(sheetHeadSchema, head, `The sheet "${clipped(label || name)}"`);
}

export function checkCount(count: number, most: number, what: string): void {
  if (count > most) refuse(`${count} ${what} are too many; at most ${most} are possible.`);
}

/** Refuses `more` cells with values or a column's formula where the book would have too many to be opened again. */
export function checkCells(book: Book, more: number): void {
  if (more === 0) return;
  const total = book.sheets.reduce((sum, sheet) => sum + sheet.rows * filledColumns(sheet).length, more);
  checkCount(total, limits.cells, 'cells in the book');
}

/** Columns that count: those with a formula or with anything in a cell. */
export const filledColumns = ({ columns, cells }: Pick<Sheet, 'columns' | 'cells'>): readonly Column[] =>
  columns.filter(({ id, formula }) => formula !== undefined || !cells.get(id)!.blank);

export function checkTitle(title: string): void {
  if (title.length > limits.short)
    refuse(`The title has ${title.length} characters; at most ${limits.short} are possible.`);
}

export function checkName({ name, note = '', role = '' }: Pick<NamedCell, 'name' | 'note' | 'role'>): void {
  if (name.length > limits.short)
    refuse(
      `The name "${clipped(name)}" has ${name.length} characters; at most ${limits.short} are possible.`,
    );
  checkText(note.length);
  checkText(role.length);
}

/** Refuses a record that is no JSON, or that is nested too deep. */
export function checkPart(key: string, value: Json): void {
  if (key === '__proto__') refuse('A record cannot be called "__proto__".');
  const wrong = jsonProblem(value, clipped(key));
  if (wrong) refuse(`The record cannot be saved: ${clipped(wrong.path)} is ${wrong.problem}.`);
}

function checkText(length: number): void {
  if (length > limits.text)
    refuse(`A text of ${length} characters is too long; at most ${limits.text} are possible in one cell.`);
}

function checkFormula(length: number): void {
  if (length > limits.formula)
    refuse(`A formula of ${length} characters is too long; at most ${limits.formula} are possible.`);
}

/** Refuses texts and formulas that are longer than a file takes. */
export function checkTexts(run: CellRun): void {
  if (isList(run)) {
    for (const cell of run) {
      if (typeof cell === 'string') checkText(cell.length);
      else if (cell === null || typeof cell !== 'object') continue;
      else if ('formula' in cell) checkFormula(cell.formula.length);
      else if ('held' in cell) checkText(Math.max(cell.held.length, cell.reason.length));
    }
    return;
  }
  if (run.texts) for (const text of run.texts) if (text !== undefined) checkText(text.length);
  for (const formula of run.formulas.values()) checkFormula(formula.length);
  for (const { held, reason } of run.held.values()) checkText(Math.max(held.length, reason.length));
}
