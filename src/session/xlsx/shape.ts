import type { A1Formula } from '../../calc/a1/index.ts';

/** Rows above the data: the headings. */
export const ABOVE = 1;

/** What a workbook file can hold (ISO/IEC 29500-1), and how many cells are written before memory runs short. */
export const most = { rows: 1_048_576, columns: 16_384, text: 32_767, cells: 4_000_000 } as const;

/** One column of a workbook file: plain data that a message can carry. */
export interface ColumnContent {
  readonly heading: string;
  readonly hidden: boolean;
  /** Pixels. */
  readonly width?: number;
  readonly numbers: 'plain' | 'date' | { readonly digits?: number; readonly percent: boolean };
  /** The unit of a row's number, where the heading cannot say one for all. */
  readonly unitOf?: ReadonlyMap<number, string>;
  /** `Kind` of each cell; held cells are texts, and errors have their code as their text. */
  readonly kinds: Uint8Array;
  readonly values: Float64Array;
  readonly texts: readonly (string | undefined)[];
  readonly formula?: A1Formula;
  /** Rows in which the column's formula does not hold. */
  readonly own: ReadonlySet<number>;
  /** Formulas of single cells. */
  readonly formulas: ReadonlyMap<number, A1Formula>;
}

export interface SheetContent {
  readonly name: string;
  readonly rows: number;
  readonly frozen: number;
  readonly columns: readonly ColumnContent[];
}

/** Everything that goes into a workbook file. */
export interface WorkbookContent {
  readonly title: string;
  readonly sheets: readonly SheetContent[];
  readonly names: readonly { readonly name: string; readonly range: string }[];
  readonly about: { readonly name: string; readonly rows: readonly (readonly string[])[] };
}
