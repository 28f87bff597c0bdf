import type { ColumnOutline } from '../../session/api.ts';
import type { Shown } from './host.ts';

/** What the grid shows just now, for all its parts: the sheet, its lines, and the columns that are not hidden. */
export class Showing {
  columns: readonly ColumnOutline[] = [];
  /** Index in the sheet of each shown column. */
  indexes: readonly number[] = [];

  constructor(public shown: Shown) {
    this.chooseColumns();
  }

  /** Works out the shown columns; true when they differ from before. */
  chooseColumns(): boolean {
    const before = this.columns;
    const { columns } = this.shown.sheet;
    this.indexes = columns.flatMap((column, index) => (column.hidden ? [] : [index]));
    this.columns = this.indexes.map((index) => columns[index]!);
    return before.length !== this.columns.length || JSON.stringify(before) !== JSON.stringify(this.columns);
  }

  /** The line and column of the grid that show a cell of the sheet; null where none do. */
  spotOf(row: number, column: string): { readonly line: number; readonly column: number } | null {
    const index = this.columns.findIndex(({ id }) => id === column);
    const line = this.shown.lines.lineOf(row);
    if (index < 0 || line === undefined || line >= this.shown.lines.count) return null;
    return { line, column: index };
  }
}

/** Rows that came in the meantime take the place of blank ones that stood ahead of them; when rows went, none stand. */
export function withRowsAhead(shown: Shown, before: Shown): Shown {
  const came = shown.lines.total - before.lines.total;
  const ahead = came < 0 ? 0 : before.lines.ahead - came;
  return ahead > 0 ? { ...shown, lines: shown.lines.withAhead(ahead) } : shown;
}
