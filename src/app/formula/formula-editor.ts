import type { FormulaCheck } from '../../session/api.ts';
import type { Chosen } from './caret.ts';
import type { Vocabulary } from './complete.ts';

/** What the formula editor tells its surroundings. */
export interface EditorEvents {
  changed(text: string, caret: number): void;
  moved(text: string, caret: number): void;
  /**
   * Enter, Tab and their like: the text is to be taken, and the sheet goes on that many cells further; with none, it
   * goes into all chosen cells. False to leave the key alone.
   */
  commit(down: number, across: number): boolean;
  cancel(): void;
  /** The text is to be gone on with in the other editor: in the cell, or in the line above. */
  over(): void;
  /** An arrow key. True when it pointed at a cell. */
  arrow(down: number, across: number, extend: boolean): boolean;
  focus(focused: boolean): void;
  /** The list of completions opened or closed. */
  completing(open: boolean): void;
  vocabulary(): Vocabulary;
}

/** What an editor of formulas can do: the one that colours and completes, and the plain field before it. */
export interface FormulaEditor {
  setText(text: string): void;
  chosen(): Chosen;
  /** Colours and underlines the text by what the session found; ignored when the text has moved on. */
  setCheck(text: string, check: FormulaCheck | null): void;
  setLabel(label: string): void;
  /** Takes the focus, the caret at the end. */
  focus(): void;
  /** Takes the focus: the caret where it is, or what is given chosen. */
  take(chosen?: Omit<Chosen, 'text'>): void;
  hasFocus(): boolean;
  /** True where a name could stand, or where one was just pointed at that another may take the place of. */
  wantsName(): boolean;
  /** True where an arrow key can only mean a cell. */
  lacksName(): boolean;
  /** Writes over the selection, as if typed. */
  insert(text: string): void;
  /** Writes a name that was pointed at; pointed at again, the next one takes its place. */
  point(name: string): void;
  destroy(): void;
}
