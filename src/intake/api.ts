import type { Book, ColumnKind, Sheet } from '../book/model.ts';
import type { Dimension } from '../units/dimension.ts';
import type { Note } from './sentences/index.ts';

/** How far a finding can be relied on. A doubtful one is asked about before anything is written. */
export type Certainty = 'sure' | 'likely' | 'doubtful';

/** Something that was found out about a file, with the evidence for it and what else it could be. */
export interface Finding<T> {
  readonly value: T;
  readonly certainty: Certainty;
  readonly because: Note;
  readonly others?: readonly T[];
}

/** Names that TextDecoder knows. */
export type Encoding = string;
export type Delimiter = ',' | ';' | '\t' | '|';
export type Quote = '"' | "'" | '';
export type LineEnd = '\n' | '\r\n' | '\r' | 'mixed';
export type DecimalMark = '.' | ',';
/** What stands between groups of three digits; '' is none, ' ' any kind of space. */
export type ThousandsMark = '' | ',' | '.' | ' ' | "'";
export type DateOrder = 'ymd' | 'dmy' | 'mdy';
/** How a duration is written with colons. */
export type Clock = 'h:mm' | 'm:ss';

/** What one column of the file holds, as far as its cells tell. */
export interface ColumnFinding {
  /** Position in the file, from 0. */
  readonly index: number;
  /** As it stands in the file, both heading lines together, without a unit line. */
  readonly heading: string;
  /** The heading without its unit: fit for a label. */
  readonly label: string;
  readonly kind: Finding<ColumnKind>;
  /** A word for the unit that the cells are written in; null when there is none. */
  readonly unit: Finding<string | null>;
  readonly dimension: Dimension | null;
  readonly decimal: Finding<DecimalMark>;
  readonly thousands: ThousandsMark;
  readonly dateOrder: Finding<DateOrder> | null;
  readonly clock: Finding<Clock> | null;
  /** Cells with a unit behind the number are the habit here. */
  readonly ownUnits: boolean;
  /** Cells with a per cent sign are the habit here. */
  readonly perCent: boolean;
  /** Position of the column that gives the unit of each row; null where the heading or the cells do. */
  readonly unitsAt: number | null;
  /** Positions of the numbers that this column gives the units of; null where it holds anything else. */
  readonly unitsOf: Finding<readonly number[]> | null;
  /** Every number is written as a time. */
  readonly timesOnly: boolean;
  /** Words taken for yes and no. */
  readonly yesNo: readonly [yes: readonly string[], no: readonly string[]] | null;
  /** Words of this column that mean "not measured". */
  readonly missing: readonly string[];
  readonly filled: number;
  readonly blank: number;
  /** Filled cells that do not fit the kind. */
  readonly unfit: number;
  readonly examples: readonly string[];
}

/** Another shape for the rows of a file. */
export type Shape =
  /** One row a date, a set or a trial, out of columns that repeat. */
  | { readonly to: 'long'; readonly name?: string | undefined; readonly value?: string | undefined }
  /** One column for each text of `name`, filled from `value`; one row for each `by`. */
  | {
      readonly to: 'wide';
      readonly name: string;
      readonly value: string;
      readonly by: readonly string[];
      /** Columns that are there even when the file lacks them. */
      readonly columns?: readonly string[] | undefined;
    };

/** Which table of which workbook the rows come from. */
export interface WorkbookTable {
  readonly kind: 'xlsx' | 'ods';
  readonly table: string;
  readonly tables: readonly string[];
}

/** What came out of looking at a file. Nothing has been written. */
export interface Findings {
  readonly name: string;
  readonly size: number;
  /** SHA-256 of the bytes, hexadecimal. */
  readonly hash: string;
  /** null for a text file. */
  readonly workbook: WorkbookTable | null;
  readonly encoding: Finding<Encoding>;
  readonly byteOrderMark: boolean;
  readonly delimiter: Finding<Delimiter>;
  readonly quote: Finding<Quote>;
  readonly lineEnd: LineEnd;
  /** Lines before the headings. */
  readonly preamble: Finding<number>;
  /** 0, 1 or 2 lines of headings. */
  readonly headingLines: Finding<number>;
  /** The line after the headings gives units. */
  readonly unitsLine: Finding<boolean>;
  /** Lines at the end that are no rows: totals, notes. */
  readonly footer: Finding<number>;
  /** What becomes of rows with fewer cells than headings. */
  readonly shortRows: Finding<'hold' | 'place'>;
  /** The shape the rows are brought into; null leaves them as they are. A proposal stands in `others`. */
  readonly shape: Finding<Shape | null>;
  /** Each row is one set; null where the file numbers no sets, or counts them. */
  readonly rowIsSet: Finding<boolean> | null;
  /** The columns, in the new shape if there is one. */
  readonly columns: readonly ColumnFinding[];
  /** Rows of data seen; all of them unless `partial`. */
  readonly rows: number;
  /** True when only the beginning and the end of a long file were looked at. */
  readonly partial: boolean;
  /** The first rows, cell by cell. */
  readonly sample: readonly (readonly string[])[];
  /** What should be known before anything is written. */
  readonly notes: readonly Note[];
}

/** What the user decides instead of the findings. */
export interface Choices {
  readonly encoding?: Encoding | undefined;
  readonly delimiter?: Delimiter | undefined;
  readonly quote?: Quote | undefined;
  readonly preamble?: number | undefined;
  readonly headingLines?: number | undefined;
  readonly unitsLine?: boolean | undefined;
  readonly footer?: number | undefined;
  readonly shortRows?: 'hold' | 'place' | undefined;
  readonly decimal?: DecimalMark | undefined;
  readonly dateOrder?: DateOrder | undefined;
  readonly missing?: readonly string[] | undefined;
  readonly shape?: Shape | null | undefined;
  /** Each row is one set. */
  readonly rowIsSet?: boolean | undefined;
  /** By position of the column in the findings, from 0. */
  readonly columns?: Readonly<Record<number, ColumnChoice>> | undefined;
}

/** What the user decides about one column. */
export interface ColumnChoice {
  readonly kind?: ColumnKind | undefined;
  /** Label of a new column. */
  readonly label?: string | undefined;
  /** null: a plain number. */
  readonly unit?: string | null | undefined;
  readonly factor?: number | undefined;
  readonly decimal?: DecimalMark | undefined;
  readonly dateOrder?: DateOrder | undefined;
  readonly clock?: Clock | undefined;
  /** Of a column of units: positions of the numbers that it is for; none leaves it a column of texts. */
  readonly unitsOf?: readonly number[] | undefined;
  /** Texts that are read as others; as '' they are blank. */
  readonly readAs?: Readonly<Record<string, string>> | undefined;
  readonly missing?: readonly string[] | undefined;
  readonly yes?: readonly string[] | undefined;
  readonly no?: readonly string[] | undefined;
  /** Name of the sheet's column that it feeds; null leaves it out. */
  readonly feeds?: string | null | undefined;
}

/** Bounds and sense checks, handed in by whoever knows the domain. */
export interface Plausibility {
  readonly columns: readonly PlausibleColumn[];
  readonly rows: readonly PlausibleRow[];
}

export interface PlausibleColumn {
  /** Names or labels of columns that this is about, in any spelling that the synonyms know. */
  readonly names: readonly string[];
  readonly dimension?: Dimension | undefined;
  /** In the dimension's base unit. */
  readonly min?: number | undefined;
  readonly max?: number | undefined;
  readonly because?: string | undefined;
}

/** Several values of one row that must make sense together. */
export interface PlausibleRow {
  readonly about: string;
  readonly needs: readonly string[];
  readonly wants?: readonly string[];
  /** The doubt in words, or null. Values in base units, in the order of `needs` then `wants`; null where blank. */
  check(values: readonly (number | null)[]): string | null;
}

export interface IntakeOptions {
  /** File name, for the report and for the provenance. */
  readonly name?: string;
  readonly choices?: Choices;
  readonly plausibility?: Plausibility;
  /** When the import happens, ISO 8601; goes into the provenance. Dates after it are doubted. */
  readonly now?: string;
  /** Names that no new column may have (functions of the formula language). */
  readonly reserved?: (name: string) => boolean;
  /** SHA-256 of the bytes, if it is known already. */
  readonly hash?: string;
  /** Size of the file that arrived, when the bytes were taken out of it. */
  readonly size?: number;
  /** The workbook that the table was taken out of. */
  readonly workbook?: WorkbookTable;
  /** Files above this are refused. */
  readonly largest?: number;
}

export interface Progress {
  readonly done: number;
  readonly total: number;
  readonly about: string;
}

/** Where one column of the file goes. */
export interface ColumnReport {
  readonly heading: string;
  /** Name of the column it went to; null when it was left out. */
  readonly column: string | null;
  readonly isNew: boolean;
  readonly kind: ColumnKind | null;
  /** What a cell was multiplied with to come to the base unit. */
  readonly factor: number;
  readonly unit: string | null;
  readonly filled: number;
  readonly blank: number;
  readonly held: number;
  readonly notes: readonly Note[];
}

/** Cells of one column that have the same text and cannot be read for the same reason. */
export interface Unreadable {
  /** Position of the column in the findings. */
  readonly index: number;
  readonly text: string;
  readonly reason: string;
  readonly count: number;
  /** Line of the file on which the first of them is. */
  readonly line: number;
}

/** A row that could not be placed. */
export interface HeldRow {
  /** Line of the file on which it begins, from 1. */
  readonly line: number;
  readonly raw: string;
  readonly reason: Note;
}

/** Every line of the file is counted once here. */
export interface Report {
  readonly name: string;
  readonly lines: {
    readonly total: number;
    readonly preamble: number;
    readonly headings: number;
    readonly blank: number;
    readonly repeatedHeadings: number;
    readonly footer: number;
    /** Lines that rows take up; more than the rows when cells hold line breaks. */
    readonly rows: number;
  };
  /** in = placed + held; placed = added + updated + unchanged + left. */
  readonly rows: {
    readonly in: number;
    readonly placed: number;
    readonly held: number;
    readonly added: number;
    readonly updated: number;
    /** Rows that stood in the sheet already and were not entered again. */
    readonly unchanged: number;
    /** Rows that the sheet has with other values; it kept its own. */
    readonly left: number;
  };
  readonly cells: { readonly filled: number; readonly held: number };
  readonly columns: readonly ColumnReport[];
  /** Lines that are neither headings nor rows, as they stand: preamble, footer. */
  readonly apart: readonly {
    readonly line: number;
    readonly raw: string;
    readonly as: 'preamble' | 'footer';
  }[];
  readonly notes: readonly Note[];
}

/** What is kept with the book about a file that came in. */
export interface Provenance {
  readonly file: string;
  readonly size: number;
  readonly hash: string;
  readonly time: string;
  readonly sheet: string;
  readonly recipe: string | null;
  readonly mode: 'append' | 'replace' | 'update';
  readonly rows: Report['rows'];
  readonly cells: Report['cells'];
  /** How the file was read, so that held rows can be mended and read again. */
  readonly reading: {
    readonly delimiter: Delimiter;
    readonly quote: Quote;
    readonly headings: readonly string[];
    readonly shape: Shape | null;
  };
}

export interface Target {
  /** The sheet the rows go to; null makes a new one. */
  readonly sheet: Sheet | null;
  /** Label of a new sheet; the file's name if there is none. */
  readonly label?: string;
  /** The book around it, which is only read: sheet names that are taken, the sheet of held rows. */
  readonly book?: Book;
}
