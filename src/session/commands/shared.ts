/** What commands share: schemas, and what they look up before they plan. */
import type { Edit } from '../../book/edit.ts';
import type { Column, Sheet } from '../../book/model.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import { givenNameProblem } from '../../calc/index.ts';
import type { Following } from '../follow-references.ts';
import type { State } from './define.ts';

export const sheetId = z.string();
export const columnId = z.string();
export const row = z.int().min(0);
export const count = z.int().min(1);

/** Edits as one; a single one stays itself. */
export const together = (edits: readonly Edit[]): Edit =>
  edits.length === 1 ? edits[0]! : { do: 'batch', edits };

export const plural = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;

/** "row 3", "rows 3–7", for words; rows count from 1 there. */
export const rowsInWords = (from: number, many: number): string =>
  many === 1 ? `row ${from + 1}` : `rows ${from + 1}–${from + many}`;

/** "femur of row 3", "femur and tibia of rows 3–7", "5 columns of row 3". */
export function cellsInWords(columns: readonly Column[], from: number, many: number): string {
  const names = columns.map((c) => c.label || c.name);
  const what = names.length > 2 ? plural(names.length, 'column') : names.join(' and ');
  return `${what} of ${rowsInWords(from, many)}`;
}

const more = (count: number): string => (count === 1 ? 'says' : 'say');

/** What a rename did elsewhere, in a sentence or two; undefined for nothing. */
export function renamedInWords({ formulas, parts }: Following, to: string): string | undefined {
  const said = [
    formulas ? `${plural(formulas, 'formula')} now ${more(formulas)} ${to}.` : '',
    parts.length ? `Changed with it: ${counted(parts)}.` : '',
  ].filter(Boolean);
  return said.length ? said.join(' ') : undefined;
}

/** What a removal did elsewhere; undefined for nothing. */
export function lostInWords({ formulas, parts }: Following): string | undefined {
  const said = [
    formulas ? `${plural(formulas, 'formula')} used it and ${more(formulas)} #REF! now.` : '',
    parts.length ? `Also used by: ${counted(parts)}.` : '',
  ].filter(Boolean);
  return said.length ? said.join(' ') : undefined;
}

/** The same before it is done. */
export function wouldLoseInWords({ formulas, parts }: Following): string | undefined {
  const said = [
    formulas ? `${plural(formulas, 'formula')} would show #REF!.` : '',
    parts.length ? `Also used by: ${counted(parts)}.` : '',
  ].filter(Boolean);
  return said.length ? said.join(' ') : undefined;
}

/** "2 charts, 4 sets of import settings, handout": several of a kind are counted, the only one is named. */
function counted(words: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const word of words) counts.set(word, (counts.get(word) ?? 0) + 1);
  return [...counts]
    .map(([word, count]) => (count === 1 ? word : `${count} ${word.replace(/^\w+/, '$&s')}`))
    .join(', ');
}

/** The columns from the one named to as many to the right as asked. */
export function columnsById(sheet: Sheet, ids: readonly string[]): Column[] {
  return ids.map(
    (id) =>
      sheet.columns.find((c) => c.id === id) ??
      refuse(`There is no column "${id}" in the sheet "${sheet.name}".`),
  );
}

/** An id for something new: its name, or the name with a figure when that id is taken. */
export const newId = (name: string, taken: (id: string) => boolean): string => {
  if (!taken(name)) return name;
  for (let i = 2; ; i++) if (!taken(`${name}_${i}`)) return `${name}_${i}`;
};

function checkName(state: State, name: string, whose: Parameters<typeof givenNameProblem>[2]): void {
  const problem = givenNameProblem(name, state.book, whose);
  if (problem) refuse(problem);
}

/** Refuses a name that a column cannot have. `self`: its name so far; without a sheet: a column of a sheet to be. */
export const checkColumnName = (state: State, sheet: string | undefined, name: string, self?: string): void =>
  checkName(state, name, {
    what: 'column',
    ...(sheet === undefined ? {} : { sheet }),
    ...(self === undefined ? {} : { self }),
  });

/** Refuses a name that a sheet cannot have. */
export const checkSheetName = (state: State, name: string, self?: string): void =>
  checkName(state, name, { what: 'sheet', ...(self === undefined ? {} : { self }) });

/** Refuses a name that a cell cannot have. */
export const checkCellName = (state: State, name: string, self?: string): void =>
  checkName(state, name, { what: 'named cell', ...(self === undefined ? {} : { self }) });

/** True for a name that a column of this sheet cannot have. */
export const columnTaken =
  (state: State, sheet: string | undefined) =>
  (name: string): boolean =>
    givenNameProblem(name, state.book, { what: 'column', ...(sheet === undefined ? {} : { sheet }) }) !==
    undefined;

/** True for a name that a sheet cannot have. */
export const sheetTaken =
  (state: State) =>
  (name: string): boolean =>
    givenNameProblem(name, state.book, { what: 'sheet' }) !== undefined;
