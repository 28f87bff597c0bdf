import type { ColumnOutline } from '../../session/api.ts';
import type { Drawing } from '../../session/marks/drawings.ts';
import { CellMark } from '../../session/sheet/cell-mark.ts';
import type { Shown } from '../grid/host.ts';
import { fetchLines } from '../grid/lines-tile.ts';
import type { Page } from '../state/page.ts';

/** Lines fetched at once, and cells that are printed at most. */
const step = 500;
const most = 500_000;

/** A cell as it is printed. */
export interface PrintedCell {
  readonly text: string;
  readonly numeric: boolean;
  readonly held: boolean;
  /** What the column's marks draw into it. */
  readonly drawn?: { readonly drawing: Drawing; readonly at: number };
}
export interface PrintedLine {
  readonly summary: boolean;
  /** By index of the shown columns. */
  readonly cells: readonly PrintedCell[];
}
export interface Printed {
  readonly columns: readonly ColumnOutline[];
  readonly lines: readonly PrintedLine[];
  /** Lines that are left out. */
  readonly beyond: number;
  readonly held: boolean;
}

/** The lines of the sheet as they are on show: its view's rows in its order, with their lines of summaries. */
export async function printedLines({ service }: Page, shown: Shown): Promise<Printed> {
  const { sheet } = shown;
  const columns = sheet.columns.flatMap((column, index) => (column.hidden ? [] : [{ column, index }]));
  const tileOf = fetchLines(
    {
      tile: ({ id }, ...at) => service.tile(id, ...at),
      tileOfRows: ({ id }, ...at) => service.tileOfRows(id, ...at),
    },
    shown,
  );
  const lines: PrintedLine[] = [];
  const count = Math.min(shown.lines.count, Math.max(1, Math.floor(most / Math.max(1, columns.length))));
  let held = false;
  for (let from = 0; from < count; from += step) {
    const tile = await tileOf(from, Math.min(step, count - from), 0, sheet.columns.length);
    for (let line = from; line < Math.min(from + step, count); line++) {
      const what = shown.lines.at(line);
      if (what.is === 'new') continue;
      lines.push({
        summary: what.is === 'summary',
        cells: columns.map(({ column, index }) => {
          const numbers = column.kind === 'number' || column.kind === 'date';
          if (what.is === 'summary') {
            const { text = '', what: figure } = shown.summaries[what.group]?.[column.id] ?? {};
            return { text: figure ? `${figure} ${text}` : text, numeric: numbers, held: false };
          }
          const at = (line - tile.row) * tile.columns + index;
          const marks = tile.marks[at] ?? 0;
          const drawing = tile.drawings?.find((one) => one.column === index);
          const isHeld = (marks & CellMark.held) !== 0;
          held ||= isHeld;
          return {
            text: tile.texts[at] ?? '',
            // An error stands where the number would.
            numeric: (marks & CellMark.numeric) !== 0 || (numbers && (marks & CellMark.error) !== 0),
            held: isHeld,
            ...(drawing ? { drawn: { drawing, at: line - tile.row } } : {}),
          };
        }),
      });
    }
  }
  return { columns: columns.map(({ column }) => column), lines, beyond: shown.lines.count - count, held };
}
