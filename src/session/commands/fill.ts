import { sheetOf } from '../../book/book.ts';
import { type Cell, type Cells, cellOf } from '../../book/cells.ts';
import type { Edit } from '../../book/edit.ts';
import { limits } from '../../book/file-frame.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import { shiftRelative } from '../../calc/index.ts';
import { defineCommand } from './define.ts';
import { seriesOf } from './series.ts';
import { cellsInWords, columnId, columnsById, count, row, sheetId, together } from './shared.ts';

/**
 * Fills rows from the rows [from, from + fromRows), over and over; addresses without `$` in formulas move along. With
 * `series` numbers, dates and texts that end in a number go on as they began. Rows that are not there yet are added.
 */
export const fill = defineCommand({
  id: 'fill',
  schema: z.strictObject({
    sheet: sheetId,
    columns: z.array(columnId).min(1),
    from: row,
    fromRows: count,
    row,
    rows: count,
    series: z.boolean().optional(),
  }),
  plan(state, { sheet: id, columns: ids, from, fromRows, row, rows, series = false }) {
    const sheet = sheetOf(state.book, id);
    const columns = columnsById(sheet, ids);
    if (from + fromRows > sheet.rows)
      refuse(`The sheet "${sheet.name}" has ${sheet.rows} rows; the selected rows go beyond them.`);
    if (row + rows > limits.rows) refuse(`A sheet has at most ${limits.rows} rows.`);
    const cells = ids.map((column) =>
      filled(sheet.cells.get(column)!, { from, fromRows, row, rows, series }),
    );
    const edits: Edit[] = [{ do: 'put-cells', sheet: id, row, columns: ids, cells }];
    if (row + rows > sheet.rows)
      edits.unshift({ do: 'add-rows', sheet: id, row: sheet.rows, count: row + rows - sheet.rows });
    return { edit: together(edits), words: `Fill ${cellsInWords(columns, row, rows)}` };
  },
});

interface Filling {
  readonly from: number;
  readonly fromRows: number;
  readonly row: number;
  readonly rows: number;
  readonly series: boolean;
}

function filled(cells: Cells, { from, fromRows, row, rows, series }: Filling): Cell[] {
  const pattern = Array.from({ length: fromRows }, (_, i) => cellOf(cells, from + i));
  const next = series ? seriesOf(pattern) : undefined;
  return Array.from({ length: rows }, (_, i) => {
    const offset = row + i - from;
    if (next) return next(offset);
    const source = ((offset % fromRows) + fromRows) % fromRows;
    const cell = pattern[source]!;
    return cell !== null && typeof cell === 'object' && 'formula' in cell
      ? { formula: shiftRelative(cell.formula, offset - source, 0) }
      : cell;
  });
}
