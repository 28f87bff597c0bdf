import type {
  Choices,
  ColumnReport,
  DateOrder,
  DecimalMark,
  Recipe,
  Report,
  Shape,
  Unreadable,
} from '../../intake/index.ts';
import type { WhoReport } from '../../intake/people/index.ts';
import type { Dimension } from '../../units/dimension.ts';

/** Which column names people, where they are listed, and who is meant by a text. */
export type WhoRule = NonNullable<Recipe['who']>;

/** What the person decides about a file that is about to come in; what is left out is found out. */
export interface FileDecisions {
  /** Id of the sheet; null makes a new one; left out, the sheet that the file belongs to. */
  readonly sheet?: string | null;
  /** Id of the sheet on show: it is taken where no recipe says another and most headings fit. */
  readonly near?: string;
  /** Which table of a workbook. */
  readonly table?: string;
  /** Key of the import settings to use; null: none, though some fit. */
  readonly recipe?: string | null;
  readonly mode?: 'append' | 'replace' | 'update';
  readonly key?: readonly string[];
  /** What becomes of rows that the sheet has with other values. */
  readonly ofDiffering?: 'leave' | 'take' | 'add';
  readonly rest?: 'add';
  /** All rows of the sheet are to be replaced, though they came from elsewhere. */
  readonly replace?: true;
  readonly choices?: Choices;
  readonly who?: WhoRule | null;
  /** People to add to the roster. */
  readonly newPeople?: readonly string[];
}

/** A sheet and the import settings by which a file would come into it. */
export interface SettingsChoice {
  /** Id. */
  readonly sheet: string;
  readonly label: string;
  /** Key of the import settings; null matches headings. */
  readonly recipe: string | null;
  readonly title: string | null;
}

/** Why a file could not be read for a sheet, and what can be done instead. */
export interface Stuck {
  readonly sheet: { readonly id: string; readonly label: string } | null;
  /** Title of the import settings that did not fit. */
  readonly title: string | null;
  /** Other import settings of the book. */
  readonly others: readonly SettingsChoice[];
}

/** Rows that would be replaced though they did not come from this file. */
export interface Replacing {
  readonly rows: number;
  /** Files they came from; none where they were entered. */
  readonly files: readonly string[];
}

/** A finding with its evidence in words. */
export interface FoundOut<T> {
  readonly value: T;
  readonly doubtful: boolean;
  readonly because: string;
}

/** How the file as a whole is read. */
export interface FileFindings {
  readonly encoding: FoundOut<string>;
  readonly delimiter: FoundOut<string>;
  readonly quote: FoundOut<string>;
  readonly preamble: FoundOut<number>;
  readonly headingLines: FoundOut<number>;
  readonly unitsLine: FoundOut<boolean>;
  readonly footer: FoundOut<number>;
  readonly shortRows: FoundOut<string>;
  readonly shape: FoundOut<Shape | null> & { readonly proposed: Shape | null };
}

/** One column of the file and where it goes. */
export interface FileColumn extends Omit<ColumnReport, 'notes' | 'kind'> {
  /** Position in the findings. */
  readonly index: number;
  /** Label of the sheet's column. */
  readonly label: string | null;
  /** Dimension that the sheet's column has already. */
  readonly fixed: Dimension | null;
  readonly kind: FoundOut<string>;
  /** Unit in which the cells are written, by its sign; null for none. */
  readonly written: FoundOut<string | null>;
  readonly decimal: FoundOut<DecimalMark>;
  readonly dateOrder: FoundOut<DateOrder> | null;
  readonly clock: FoundOut<string> | null;
  /** Positions of the numbers that a column of units may be for. */
  readonly unitsFor: readonly number[];
  readonly examples: readonly string[];
  readonly notes: readonly string[];
}

/** A question that the file leaves open and that must be answered before it comes in. */
export interface OpenQuestion {
  readonly column: number;
  readonly about: 'decimal' | 'dateOrder' | 'clock' | 'unitsOf' | 'rowIsSet';
  readonly sentence: string;
}

/** Rows that would be added though the sheet has them with other values: what becomes of them is asked. */
export interface Differing {
  readonly count: number;
  /** Labels of the columns by which they are recognised. */
  readonly key: readonly string[];
  /** What was decided, now or before; null asks. */
  readonly decided: 'leave' | 'take' | 'add' | null;
  /** The first of them; without cells the file only has the row once more. */
  readonly first: readonly {
    readonly line: number;
    readonly row: number;
    readonly who: string;
    readonly cells: readonly { readonly column: string; readonly there: string; readonly file: string }[];
  }[];
}

export interface ShownRow {
  readonly line: number;
  readonly cells: readonly { readonly text: string; readonly held?: string }[];
}

/** What a file holds and what would become of it. Nothing is written. */
export interface FileReading {
  readonly name: string;
  readonly size: number;
  readonly tables: { readonly table: string; readonly tables: readonly string[] } | null;
  /** Where it goes: id and label; a null id is a new sheet. */
  readonly sheet: { readonly id: string | null; readonly label: string };
  /** Sheets and settings that it fits equally well: which is meant is asked. */
  readonly fits: readonly SettingsChoice[];
  /** Rows from elsewhere that would be replaced: asked; null where none are, or where it was confirmed. */
  readonly replacing: Replacing | null;
  /** Title of the recipe it is read by. */
  readonly recipe: string | null;
  /** Title of the import settings of a file of the same exporter, by which its cells are read. */
  readonly like: string | null;
  readonly mode: 'append' | 'replace' | 'update';
  readonly key: readonly string[];
  readonly findings: FileFindings;
  readonly columns: readonly FileColumn[];
  readonly questions: readonly OpenQuestion[];
  readonly differing: Differing | null;
  readonly unreadable: readonly Unreadable[];
  readonly rows: Report['rows'];
  readonly cells: Report['cells'];
  readonly notes: readonly string[];
  readonly preview: {
    readonly columns: readonly string[];
    readonly first: readonly ShownRow[];
    readonly doubtful: readonly ShownRow[];
  };
  /** What stands in the sheet and would change, the first of it. */
  readonly changes: readonly {
    readonly row: number;
    readonly column: string;
    readonly before: string;
    readonly after: string;
  }[];
  /** Rows that cannot be placed, the first of them. */
  readonly heldRows: readonly { readonly line: number; readonly raw: string; readonly reason: string }[];
  readonly who: (WhoReport & { readonly rule: WhoRule | null; readonly people: readonly string[] }) | null;
}
