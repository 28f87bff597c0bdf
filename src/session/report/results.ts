import type { Sheet } from '../../book/model.ts';
import type { ReadContext } from '../open-book.ts';
import { cellWriter } from '../text/cell-text.ts';
import { labelled, rowsShown } from './found.ts';

/** A worked sheet as a table of texts. */
export interface ResultTable {
  readonly title: string;
  readonly note: string | null;
  readonly headings: readonly { readonly label: string; readonly numeric: boolean }[];
  readonly rows: readonly (readonly string[])[];
  /** Rows and columns that are not printed. */
  readonly more: string | null;
}

const most = { rows: 100, columns: 12 };

/** The worked sheets of the book: what it worked out from what was gathered. Hidden columns stay out. */
export const resultsOf = (context: ReadContext): readonly ResultTable[] =>
  context.book.sheets
    .filter(({ purpose, rows }) => purpose === 'worked' && rows > 0)
    .map((sheet) => tableOf(context, sheet));

function tableOf(context: ReadContext, sheet: Sheet): ResultTable {
  const visible = sheet.columns.filter(({ hidden }) => !hidden);
  const columns = visible.slice(0, most.columns);
  const rows = rowsShown(context, sheet);
  const writers = columns.map((column) => cellWriter(context, sheet, column));
  const text = (row: number): readonly string[] =>
    columns.map(({ id }, c) => {
      const text = writers[c]!(row);
      return sheet.cells.get(id)!.held.has(row) ? text : text.replace(/^-(?=\d)/, '−');
    });
  const left = [
    rows.length > most.rows ? `${rows.length - most.rows} further rows` : '',
    visible.length > most.columns ? `${visible.length - most.columns} further columns` : '',
  ].filter(Boolean);
  return {
    title: sheet.label,
    note: sheet.note ?? null,
    headings: columns.map((column) => ({ label: labelled(column), numeric: column.kind === 'number' })),
    rows: Array.from(rows.slice(0, most.rows), text).filter((cells) => cells.some((cell) => cell !== '')),
    more: left.length > 0 ? `${left.join(' and ')} are in the book.` : null,
  };
}
