/** What the page and the command line may ask of an open book, and what comes back: plain data, safe to post. */
import type { FormulaCheck, Place } from '../calc/api.ts';
import type { ChartOutline } from './charts/chart-record.ts';
import type { NameOutline, SheetOutline } from './sheet/sheet-answers.ts';

export type * from './checks/doubt.ts';
export type * from './figure/figure-answers.ts';
export type * from './sheet/sheet-answers.ts';

export interface Outline {
  readonly title: string;
  /** Grows with every change, and when values that were still to be worked out have come. */
  readonly version: number;
  /** The version that the book itself last changed at: the same as long as its file would be the same. */
  readonly changed: number;
  readonly sheets: readonly SheetOutline[];
  readonly names: readonly NameOutline[];
  /** What undo and redo would do, in words; null when there is nothing. */
  readonly undo: string | null;
  readonly redo: string | null;
  /** Where undo ends and why, where something before that cannot be undone any more. */
  readonly undoEnd?: string;
  /** How many doubts wait to be looked at. */
  readonly doubts: number;
  /** The charts that belong to the book. */
  readonly charts: readonly ChartOutline[];
  /** After how many days a test counts as old, where the book says so. */
  readonly testsOlderThan?: number;
}

/** What a command did: the outline after it, or why it was refused. Nothing is changed by a refused command. */
export type Done =
  | { readonly ok: true; readonly outline: Outline; readonly note?: string }
  | { readonly ok: false; readonly sentence: string };

export type { FormulaCheck, Place };
