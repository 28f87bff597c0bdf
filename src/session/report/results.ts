import { valueAt } from '../../../functions/core/value.ts';
import { CellKind } from '../../book/cells.ts';
import type { Sheet } from '../../book/model.ts';
import { displayOf } from '../display.ts';
import type { Viewed } from '../views.ts';
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
export const resultsOf = (viewed: Viewed): readonly ResultTable[] =>
  viewed.book.sheets
    .filter(({ purpose, rows }) => purpose === 'worked' && rows > 0)
    .map((sheet) => tableOf(viewed, sheet));

function tableOf(viewed: Viewed, sheet: Sheet): ResultTable {
  const visible = sheet.columns.filter(({ hidden }) => !hidden);
  const columns = visible.slice(0, most.columns);
  const rows = rowsShown(viewed, sheet);
  const ranges = columns.map(({ id }) => viewed.calculation.column(sheet.id, id));
  const text = (row: number): readonly string[] =>
    columns.map((column, c) => {
      const cells = sheet.cells.get(column.id)!;
      if (cells.kinds[row] === CellKind.held) return cells.held.get(row)!.held;
      return displayOf(valueAt(ranges[c]!, row), column, viewed.locale).replace(/^-(?=\d)/, '−');
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
    more: left.length > 0 ? `${left.join(' and ')} stand in the book.` : null,
  };
}
