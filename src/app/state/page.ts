/** The state of the page, as signals, and the notices that it shows. */
import type { ReadonlySignal, Signal } from '@preact/signals';
import { computed, signal } from '@preact/signals';
import type { CellInfo, Done, Outline, Place, SheetOutline } from '../../session/api.ts';
import type { BookService, Keeping } from '../../worker/protocol.ts';
import type { BookFile } from '../files/files.ts';
import type { GridSelection, MenuRequest, Shown } from '../grid/host.ts';

export type Side = 'figure' | 'picture' | 'working' | 'guide' | 'doubts';
/** What a formula or value that is being written is for: the whole column's formula, or one cell. */
export type Scope = 'column' | 'cell';

export interface Notice {
  readonly text: string;
  readonly tone: 'plain' | 'wrong';
  /** A later one replaces an earlier one, even with the same text. */
  readonly at: number;
}

/** The dialogue that is open, with what it is about. */
export type Dialogue =
  | { readonly is: 'keys' }
  /** Without a column: a new one, put at `index`. */
  | { readonly is: 'column'; readonly sheet: string; readonly column?: string; readonly index: number }
  | { readonly is: 'sheet'; readonly sheet?: string }
  /** Where a sheet's rows came from. */
  | { readonly is: 'imports'; readonly sheet: string }
  /** Without a key: a new one. */
  | { readonly is: 'chart'; readonly key?: string }
  /** What a column shows in the lines of summaries. */
  | { readonly is: 'summary'; readonly sheet: string; readonly column: string }
  /** Rules and drawings of a column's cells. */
  | { readonly is: 'marks'; readonly sheet: string; readonly column: string }
  | { readonly is: 'filter'; readonly sheet: string; readonly column: string }
  | { readonly is: 'find' | 'books' | 'import' | 'versions' | 'handout rules' | 'report' }
  /** Something to be said before it is done. */
  | {
      readonly is: 'confirm';
      readonly title: string;
      readonly text: string;
      /** What the button does, a verb. */
      readonly label: string;
      readonly act: () => void;
    }
  | { readonly is: 'name'; readonly place: Required<Place>; readonly name: string | null };

/** What the page asks of the grid on show. */
export interface GridHandle {
  select(row: number, column: string, focus?: boolean): void;
  selectColumn(column: string): void;
  /** Chooses a block from a cell on: so many of the lines and columns that are on show. */
  selectBlock(row: number, column: string, lines: number, columns: number): void;
  /**
   * Chooses the cell that many lines below the active one, or columns to its right, and gives it the focus; `written` where
   * something was written into the active one.
   */
  step(down: number, across: number, written?: boolean): void;
  /** Where a cell stands in the window; null for one that is not drawn. */
  boxOf(row: number, column: string): DOMRect | null;
  /** Points at the next cell for a formula: next to the one pointed at last, at first to the formula's own. */
  pointOn(own: { row: number; column: string }, down: number, across: number, extend: boolean): void;
  /** Nothing is pointed at any more. */
  pointNoMore(): void;
  focus(): void;
  edit(): void;
  /** Asks for what is in view anew, before the page has heard what a command came to. */
  refresh(): void;
}

/** What the page asks of the formula editor on show. */
export interface LineHandle {
  focus(): void;
  insert(text: string): void;
  hasFocus(): boolean;
  /** True where a name could stand: after a bracket, a comma, an operator, at the start, or in place of an unknown word. */
  wantsName(): boolean;
}

/** State of the page: what is open, what is chosen, what is on show. Everything about the book comes from its service. */
export interface Page {
  readonly service: BookService;
  readonly outline: Signal<Outline | null>;
  readonly sheetId: Signal<string | null>;
  readonly sheet: ReadonlySignal<SheetOutline | null>;
  /** The chart on show over the sheet, and whose: everyone’s, the selected row’s athlete, or a name. */
  readonly chart: Signal<string | null>;
  readonly chartPerson: Signal<'everyone' | 'selected' | { readonly name: string }>;
  /** The athlete whose tests are entered one by one over the sheet. */
  readonly rack: Signal<{ readonly sheet: string; readonly row: number } | null>;
  /** What the grid shows of it: follows the sheet, its view and its summaries. */
  readonly shown: Signal<Shown | null>;
  readonly selection: Signal<GridSelection | null>;
  /** The active cell as the session last told it. */
  readonly cell: Signal<CellInfo | null>;
  /** Chosen by hand; null follows the selection. */
  readonly scopeChoice: Signal<Scope | null>;
  readonly scope: ReadonlySignal<Scope>;
  readonly side: Signal<Side | null>;
  /** Function that the guide shows. */
  readonly guide: Signal<string | null>;
  /** The way that the guide goes step by step, and the step that was asked for last. */
  readonly way: Signal<{ readonly guide: string; readonly step: string | null } | null>;
  readonly contentsOpen: Signal<boolean>;
  readonly finderOpen: Signal<boolean>;
  readonly dialogue: Signal<Dialogue | null>;
  readonly contextMenu: Signal<MenuRequest | null>;
  readonly notice: Signal<Notice | null>;
  readonly busy: Signal<string | null>;
  /** How many commands wait for their answer. */
  readonly working: Signal<number>;
  readonly file: Signal<BookFile | null>;
  /** The open book is a sample, as it came, and that was not put away. */
  readonly sample: Signal<boolean>;
  /** When the book that was last written to a file had last changed (Outline.changed). */
  readonly savedAt: Signal<number>;
  readonly unsaved: ReadonlySignal<boolean>;
  /** Ends the long work that is under way, where it can be ended. */
  readonly stop: Signal<(() => void) | null>;
  /** How far long work is, 0 to 1. */
  readonly progress: Signal<{ readonly about: string; readonly share: number } | null>;
  /** What is to be known about keeping books in this browser. */
  readonly libraryNote: Signal<string | null>;
  /** Whether the book is kept in this browser. */
  readonly keeping: Signal<Keeping | null>;
  readonly grid: { current: GridHandle | null };
  readonly line: { current: LineHandle | null };
}

export function createPage(service: BookService): Page {
  const outline = signal<Outline | null>(null);
  const sheetId = signal<string | null>(null);
  const selection = signal<GridSelection | null>(null);
  const cell = signal<CellInfo | null>(null);
  const scopeChoice = signal<Scope | null>(null);
  const savedAt = signal(0);
  const sheet = computed(() => outline.value?.sheets.find(({ id }) => id === sheetId.value) ?? null);
  return {
    service,
    outline,
    sheetId,
    sheet,
    chart: signal<string | null>(null),
    rack: signal<{ sheet: string; row: number } | null>(null),
    chartPerson: signal<'everyone' | 'selected' | { readonly name: string }>('everyone'),
    shown: signal<Shown | null>(null),
    selection,
    cell,
    scopeChoice,
    scope: computed(() => scopeChoice.value ?? naturalScope(selection.value, cell.value)),
    side: signal<Side | null>(isNarrow() ? null : 'figure'),
    guide: signal<string | null>(null),
    way: signal<{ guide: string; step: string | null } | null>(null),
    contentsOpen: signal(false),
    finderOpen: signal(false),
    dialogue: signal<Dialogue | null>(null),
    contextMenu: signal<MenuRequest | null>(null),
    notice: signal<Notice | null>(null),
    busy: signal<string | null>(null),
    working: signal(0),
    file: signal<BookFile | null>(null),
    sample: signal(false),
    savedAt,
    unsaved: computed(() => outline.value !== null && outline.value.changed !== savedAt.value),
    stop: signal<(() => void) | null>(null),
    progress: signal<{ about: string; share: number } | null>(null),
    libraryNote: signal<string | null>(null),
    keeping: signal<Keeping | null>(null),
    grid: { current: null },
    line: { current: null },
  };
}

/** What one would expect to edit: the column where its heading is chosen or its formula makes the value, else the cell. */
function naturalScope(selection: GridSelection | null, cell: CellInfo | null): Scope {
  if (selection?.what === 'columns') return 'column';
  return cell?.from === 'column formula' ? 'column' : 'cell';
}

/** On narrow screens nothing stands beside the sheet until it is asked for. */
const isNarrow = (): boolean => globalThis.matchMedia?.('(max-width: 860px)').matches ?? false;

let stamp = 0;

export function say(page: Page, text: string, tone: Notice['tone'] = 'plain'): void {
  page.notice.value = { text, tone, at: ++stamp };
}

/** Takes in what a command did. Answers whether it was done. */
export function settle(page: Page, done: Done): boolean {
  page.progress.value = null;
  if (!done.ok) {
    say(page, done.sentence, 'wrong');
    return false;
  }
  page.outline.value = done.outline;
  if (!done.outline.sheets.some(({ id }) => id === page.sheetId.value)) {
    page.sheetId.value = done.outline.sheets[0]?.id ?? null;
    page.selection.value = null;
  }
  // What was told as wrong already stays until it is put away.
  if (done.note && done.note !== page.notice.peek()?.text) say(page, done.note);
  return true;
}

/** The column the active cell stands in. */
export function activeColumn(page: Page) {
  const id = page.selection.value?.column;
  return page.sheet.value?.columns.find((column) => column.id === id) ?? null;
}
