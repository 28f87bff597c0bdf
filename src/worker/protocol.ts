import type { FunctionHelp } from '../../functions/core/describe.ts';
import type { CellInfo, Done, Doubt, Figure, FormulaCheck, Outline, Place, Tile } from '../session/api.ts';
import type { Command } from '../session/commands/index.ts';
import type { Preview } from '../session/views.ts';

export type { Preview };

/** What came of opening a book. */
export type Opened =
  | { readonly ok: true; readonly outline: Outline; readonly notes: readonly string[] }
  | { readonly ok: false; readonly sentence: string };

/** Progress of long work, told while it runs. */
export interface Work {
  readonly about: string;
  readonly done: number;
  readonly total: number;
}

/**
 * The typed protocol between the page and the worker that holds the open book. Every answer is plain data; every call is
 * answered in the order of asking.
 */
export interface BookService {
  /** Opens a book in place of the open one. */
  open(text: string, name: string): Promise<Opened>;
  blank(): Promise<Opened>;
  run(command: Command): Promise<Done>;
  undo(): Promise<Done>;
  redo(): Promise<Done>;
  tile(sheet: string, row: number, rows: number, column: number, columns: number): Promise<Tile>;
  cell(place: Required<Place>): Promise<CellInfo>;
  figure(sheet: string, row: number): Promise<Figure>;
  doubts(): Promise<readonly Doubt[]>;
  check(formula: string, place: Place): Promise<FormulaCheck>;
  preview(formula: string, place: Place): Promise<Preview>;
  functions(): Promise<readonly FunctionHelp[]>;
  /** The book as the text of a book file. */
  save(): Promise<string>;
  /** One sheet as CSV. */
  csv(sheet: string): Promise<string>;
  /** Names who is told of the progress of long work. */
  watch(callback: (work: Work) => void): Promise<void>;
}
