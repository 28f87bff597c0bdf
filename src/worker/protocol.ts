/** What page and worker say to each other. */
import type { FunctionHelp } from '../../functions/core/describe.ts';
import type {
  CellInfo,
  Done,
  Doubt,
  Figure,
  FormulaCheck,
  HeelOrAnkle,
  Outline,
  Place,
  PostureFigure,
  Tile,
} from '../session/api.ts';
import type { Charted } from '../session/charts/chart.ts';
import type { ChartPerson } from '../session/charts/person.ts';
import type { UnreadableCells } from '../session/checks/unreadable-cells.ts';
import type { Command } from '../session/commands/index.ts';
import type { Paste } from '../session/commands/paste-text.ts';
import type { FigureOptions } from '../session/figure/figure.ts';
import type { HandoutRule } from '../session/handouts/handout-settings.ts';
import type { HandoutRequest, Handouts } from '../session/handouts/handouts.ts';
import type { TriedRule } from '../session/handouts/tried-rule.ts';
import type { FileDecisions, FileReading, Stuck } from '../session/imports/file-reading.ts';
import type { CameFrom, Import } from '../session/imports/imports.ts';
import type { MendedRow } from '../session/imports/mend.ts';
import type { MarksDraft } from '../session/marks/draft.ts';
import type { TriedMarks } from '../session/marks/tried-marks.ts';
import type { StoredPicture } from '../session/picture/stored.ts';
import type { CohortReport, ReportRequest } from '../session/report/report.ts';
import type { ColumnSummary } from '../session/sheet/column-summary.ts';
import type { Found, Search } from '../session/sheet/find.ts';
import type { FormulaSummary, SummaryFormula } from '../session/sheet/own-summary.ts';
import type { RowView } from '../session/sheet/row-view.ts';
import type { Preview } from '../session/sheet/views.ts';
import type { LiveExample } from '../session/working/live-example.ts';
import type { Working } from '../session/working/working-answers.ts';
import type { Comparison, Difference } from '../store/compare.ts';
import type { LibraryBook } from '../store/library.ts';
import type { NamedVersion } from '../store/versions.ts';

export type { Comparison, Difference, LibraryBook, NamedVersion, Preview };

/** What came of opening a book. */
export type Opened =
  | {
      readonly ok: true;
      readonly outline: Outline;
      /** What was recovered and what was lost, a sentence each. */
      readonly notes: readonly string[];
      /** The book's id among those that the browser keeps, once it is one. */
      readonly id?: string;
    }
  | { readonly ok: false; readonly sentence: string };

/** Progress of long work, told while it runs. */
export interface Work {
  readonly about: string;
  readonly done: number;
  readonly total: number;
}

/**
 * Whether the open book is kept in this browser. `kept`: everything that was answered is on the disk. `reading`: another
 * tab writes it. The sentence says what to do.
 */
export interface Keeping {
  readonly state: 'kept' | 'keeping' | 'not kept' | 'reading';
  readonly id?: string;
  readonly sentence?: string;
  /** Milliseconds since 1970, UTC. */
  readonly at: number;
}

/** The worker was stopped and began anew, and the book is as its journal says. */
export interface Restarted {
  readonly opened: Opened;
  /** Why, and what became of it. */
  readonly sentence: string;
}

export type Answer<T> = ({ readonly ok: true } & T) | { readonly ok: false; readonly sentence: string };

/** What came of reading a file; where it does not fit, what can be done instead. */
export type ReadAnswer =
  | { readonly ok: true; readonly reading: FileReading }
  | { readonly ok: false; readonly sentence: string; readonly stuck?: Stuck };

/**
 * The typed protocol between the page and the worker that holds the open book. Every answer is plain data. A command is
 * answered only once it is stored, or `Keeping` says why it is not; commands are done in the order of asking.
 */
export interface BookService {
  /** Opens a book file in place of the open book. A sample is kept in the browser only from its first change on. */
  open(text: string, name: string, options?: { readonly sample?: boolean }): Promise<Opened>;
  blank(): Promise<Opened>;
  run(command: Command): Promise<Done>;
  /** Several commands as one step: all of them, or none. */
  runAll(words: string, commands: readonly Command[]): Promise<Done>;
  undo(): Promise<Done>;
  redo(): Promise<Done>;
  tile(sheet: string, row: number, rows: number, column: number, columns: number): Promise<Tile>;
  /** Rows picked one by one: what a view shows. */
  tileOfRows(sheet: string, rows: Int32Array, column: number, columns: number): Promise<Tile>;
  /** The rows that a view shows, in its order. */
  rowsInView(sheet: string, view: RowView): Promise<Int32Array>;
  /** A line of summaries for each group of rows (all rows where none are given), by column id. */
  summaries(
    sheet: string,
    groups: readonly (Int32Array | null)[],
  ): Promise<readonly Readonly<Record<string, ColumnSummary>>[]>;
  /** What a formula for the line of summaries gives over the rows on show. */
  triedSummary(sheet: string, column: string, tried: SummaryFormula): Promise<FormulaSummary>;
  find(search: Search): Promise<Found>;
  cell(place: Required<Place>): Promise<CellInfo>;
  /** The lifter of a row; what is tried out goes before the row's own values. */
  /** A function applied to a row; null where the row has nothing for it. */
  example(name: string, place: Required<Place>): Promise<LiveExample | null>;
  /** How a cell came about. */
  working(place: Required<Place>): Promise<Working>;
  figure(sheet: string, row: number, tried?: FigureOptions): Promise<Figure>;
  /** The lifter of a row going down, posture by posture. */
  descent(sheet: string, row: number, tried?: FigureOptions): Promise<readonly PostureFigure[]>;
  heelOrAnkle(sheet: string, row: number, tried?: FigureOptions): Promise<HeelOrAnkle | null>;
  /** The picture's points that a row has; with a fingerprint, the rows that have that picture. */
  picture(sheet: string, row: number, hash?: string): Promise<StoredPicture>;
  /** What a chart of the book shows now. */
  /** The same of one person only. */
  chart(key: string, person?: ChartPerson): Promise<Charted>;
  /** A page for each athlete, as data. */
  handouts(request: HandoutRequest): Promise<Handouts>;
  /** What a rule of the handouts does that is being written. */
  triedRule(sheet: string, rule: HandoutRule): Promise<TriedRule>;
  /** The cohort report of the book, as data. */
  report(request: ReportRequest): Promise<CohortReport>;
  /** The marks of a column as they are typed. */
  marks(sheet: string, column: string): Promise<MarksDraft>;
  /** What marks would do that are being written. */
  triedMarks(sheet: string, column: string, draft: MarksDraft): Promise<TriedMarks>;
  doubts(): Promise<readonly Doubt[]>;
  /** What else in the book would lose something by these commands, a sentence each. */
  losses(commands: readonly Command[]): Promise<readonly string[]>;
  /** Unreadable cells of a sheet, by column, text and reason. */
  unreadable(sheet: string): Promise<UnreadableCells>;
  check(formula: string, place: Place): Promise<FormulaCheck>;
  preview(formula: string, place: Place): Promise<Preview>;
  functions(): Promise<readonly FunctionHelp[]>;
  builtInFunctions(): Promise<readonly FunctionHelp[]>;
  /** Reads a table file (CSV, XLSX, ODS); nothing is written. Another reading, or `stopReading`, ends it. */
  readFile(file: Blob, name: string, decisions: FileDecisions): Promise<ReadAnswer>;
  stopReading(): Promise<void>;
  /** Writes the file that was read last, as one step. */
  importFile(): Promise<Done>;
  /** The files that came into a sheet, with the rows that were held. */
  imports(sheet: string): Promise<readonly Import[]>;
  /** The last of them, and how many rows are held in all; null where no file came in. */
  cameFrom(sheet: string): Promise<CameFrom | null>;
  /** Reads held rows of an import again, as they were mended, and places those that fit now. */
  mendRows(key: string, rows: readonly MendedRow[]): Promise<Done>;
  /** Reads a large text that is about to be pasted, so that it can be stopped; `run` then pastes what was read. */
  readPaste(paste: Paste): Promise<Answer<{ readonly lines: number; readonly width: number }>>;
  stopPaste(): Promise<void>;
  /** The book as the text of a book file, and the version it last changed at. */
  save(): Promise<{ readonly text: string; readonly changed: number }>;
  /** One sheet as CSV. */
  csv(sheet: string): Promise<string>;
  /** The whole book as an XLSX file. */
  xlsx(): Promise<Answer<{ readonly bytes: Uint8Array }>>;
  stopXlsx(): Promise<void>;

  /** The books that this browser keeps, the one opened last first. */
  books(): Promise<readonly LibraryBook[]>;
  /** Opens one of them. Where another tab writes it, it can be read; taken over, the other tab stops writing. */
  openStored(id: string, options?: { readonly takeOver?: boolean }): Promise<Opened>;
  removeBook(id: string): Promise<Answer<object>>;
  /** Named versions of the open book, the newest first. */
  versions(): Promise<readonly NamedVersion[]>;
  keepVersion(name: string): Promise<Answer<{ readonly version: NamedVersion }>>;
  /** How the open book differs from a version. */
  compareVersion(number: number): Promise<Answer<{ readonly comparison: Comparison }>>;
  /** Makes the open book what it was; undo takes that back. */
  goBack(number: number): Promise<Done>;
  dropVersion(number: number): Promise<void>;
  /** Tries again to store what is not kept. */
  keepAgain(): Promise<Keeping>;

  /** Names who is told of the progress of long work. */
  watch(callback: (work: Work) => void): Promise<void>;
  /** Names who is told whether the book is kept; told at once, and with every change. */
  follow(callback: (keeping: Keeping) => void): Promise<void>;
  /** Names who is told that the worker was stopped and began anew. */
  onRestart(callback: (restarted: Restarted) => void): Promise<void>;
  /** Names who is told that a question or a command failed for a reason nobody foresaw, whoever asked it. */
  onFault(callback: (sentence: string) => void): Promise<void>;
}

/** What the client answers itself; everything else is the worker's. */
export type ClientOnly = 'watch' | 'follow' | 'onRestart' | 'onFault';

/** What a worker is told when it starts. */
export interface Beginning {
  /** Formulas that hung before and are left out. */
  readonly stopped: readonly Place[];
  /** Tell every formula before it is computed. */
  readonly exact: boolean;
  /** Outlines count on from here, so that what was shown before is known to be old. */
  readonly version: number;
}

/** What a worker is computing: told before it does, so that the page knows what never came back. */
export interface Computing {
  readonly place: Place;
  /** False when others may have been computed since. */
  readonly exact: boolean;
  /** A formula that is only tried out, and is not in the book. */
  readonly preview?: true;
}

/** What a worker tells without being asked. */
export type Told =
  | { readonly what: 'work'; readonly work: Work }
  | { readonly what: 'keeping'; readonly keeping: Keeping }
  | { readonly what: 'computing'; readonly computing: Computing | null }
  /** No other tab writes the open book any more. */
  | { readonly what: 'free'; readonly id: string }
  /** The nth change that this worker was asked for is in the journal. */
  | { readonly what: 'stored'; readonly change: number };

/** The worker's own side of the protocol. */
export interface WorkerService extends Omit<BookService, ClientOnly> {
  begin(port: MessagePort, beginning: Beginning): Promise<void>;
}
