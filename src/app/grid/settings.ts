import type { GridSettings } from 'handsontable/settings';
import { statisticNames } from '../../session/sheet/statistic-names.ts';
import { CellEditor } from './cell-editor.ts';
import { sorted } from './chosen.ts';
import { emptyHeading, fillHeading } from './headings.ts';
import type { GridHost, GridSelection } from './host.ts';
import type { Looking } from './looking.ts';
import type { Pointer } from './pointer.ts';
import type { Showing } from './showing.ts';
import { rowNumberWidth, widthOf } from './widths.ts';

/** One empty row, shared: the grid counts its rows and never reads them. */
const emptyRow: unknown[] = [];
const headingHeight = 64;

/** The parts of the grid that its settings bind together. */
export interface Parts {
  readonly showing: Showing;
  readonly looking: Looking;
  readonly pointer: Pointer;
  readonly host: GridHost;
  /** True for a key that the library is to leave alone. */
  key(event: KeyboardEvent): boolean;
  selection(): GridSelection | null;
}

/** All that the library is told once: how it looks and behaves, and what becomes of what hands do in it. */
export function settingsOf({ showing, looking, pointer, host, key, selection }: Parts): GridSettings {
  return {
    ...shapeOf(showing),
    licenseKey: import.meta.env.VITE_GRID_LICENCE_KEY ?? 'non-commercial-and-evaluation',
    themeName: 'ht-theme-leverbook',
    injectCoreCss: false,
    width: '100%',
    height: '100%',
    autoColumnSize: false,
    autoRowSize: false,
    manualColumnResize: true,
    manualColumnMove: true,
    fillHandle: { direction: 'vertical', autoInsertRow: false },
    // Cells are cheap to fetch and dear to draw: columns are drawn when they come into view.
    viewportColumnRenderingOffset: 0,
    wordWrap: false,
    trimWhitespace: false,
    outsideClickDeselects: false,
    autoWrapRow: false,
    autoWrapCol: false,
    selectionMode: 'range',
    enterMoves: { row: 1, col: 0 },
    renderer: (_hot, td, line, column) => looking.cells.write(td, line, column),
    editor: CellEditor as unknown as new (...args: unknown[]) => unknown,
    modifyData: (line, column, holder) => {
      holder.value = looking.tiles.text(line, showing.indexes[column] ?? 0) ?? '';
    },
    afterRenderer: (td, line, column) => looking.cells.sign(td, line, column),
    afterGetColHeader: (column, th) => {
      const heading = showing.columns[column];
      // A heading can come to stand over the row numbers, when columns are no longer kept in view.
      if (column < 0 || !heading) return emptyHeading(th);
      fillHeading(th, heading);
      // The library counts from the first heading in view; the row numbers are the first column.
      th.setAttribute('aria-colindex', String(column + 2));
    },
    // What would change the grid becomes a call of the host, and the grid itself stays as it is.
    beforeChange: () => false,
    beforeCreateRow: () => false,
    beforeCreateCol: () => false,
    beforeBeginEditing: (line) => (showing.shown.lines.at(line).is === 'summary' ? false : undefined),
    beforeAutofill: (_data, source, target) => pulled(showing, host, source, target) as unknown as undefined,
    beforeColumnMove: (moved, to) => {
      host.moved(
        moved.map((index) => showing.columns[index]!),
        showing.columns.filter((_, index) => !moved.includes(index))[to] ?? null,
      );
      return false;
    },
    beforeColumnResize: (width, column) => {
      const resized = showing.columns[column];
      if (resized) host.resized(resized, Math.round(width));
      return width;
    },
    beforeKeyDown: (event) => (key(event) ? false : undefined),
    afterSelectionEnd: () => host.selected(selection()),
    beforeOnCellMouseDown: (event, coords) => pointer.down(event, coords),
    beforeOnCellMouseOver: (event, coords) => pointer.over(event, coords),
    beforeOnCellMouseUp: (event) => pointer.up(event),
    afterOnCellMouseDown: (event, coords) => {
      const column = showing.columns[coords.col ?? -1];
      if (event.detail === 2 && (coords.row ?? 0) < 0 && column) host.openHeading(column);
    },
    afterOnCellContextMenu: (event, coords) => {
      event.preventDefault();
      const over = (coords.row ?? 0) < 0 ? 'columns' : (coords.col ?? 0) < 0 ? 'rows' : 'cells';
      host.menu({ x: event.clientX, y: event.clientY, over });
    },
    afterScrollVertically: () => looking.scrolled(),
    afterScrollHorizontally: () => looking.scrolled(),
  };
}

/** What changes with the sheet on show: its lines and columns. */
export function shapeOf(showing: Showing): GridSettings {
  const { shown, columns } = showing;
  const { lines, frozen, sheet } = shown;
  const statistic = statisticNames[sheet.view?.statistic ?? 'mean'];
  return {
    data: new Array<unknown[]>(lines.count).fill(emptyRow),
    columns: columns.map(() => ({})),
    colWidths: columns.map(widthOf),
    // Headings are nodes of our own (see headings.ts); the library would write texts as markup.
    colHeaders: () => '',
    columnHeaderHeight: [headingHeight],
    rowHeaders: (line: number) => {
      // The lines of then: other ones may come in without a new shape.
      const at = showing.shown.lines.at(line);
      return at.is === 'row' ? String(at.row + 1) : at.is === 'new' ? '+' : statistic;
    },
    // Eight letters, of “maximum”, need as much room as five figures and a little.
    rowHeaderWidth: Math.max(
      rowNumberWidth(lines.total),
      lines.summed || lines.groups.length > 0 ? 18 + 7 * statistic.length : 0,
    ),
    fixedColumnsStart: Math.min(frozen, columns.length),
    fixedRowsBottom: lines.summed ? 1 : 0,
  };
}

interface Corners {
  readonly from: { readonly row: number | null; readonly col: number | null };
  readonly to: { readonly row: number | null; readonly col: number | null };
}

/** The fill handle was let go: rows of the source go over the rows of the target, as far as there are rows. */
function pulled({ shown, columns }: Showing, host: GridHost, source: Corners, target: Corners): false {
  const [top, bottom] = sorted(source.from.row ?? 0, source.to.row ?? 0);
  const [left, right] = sorted(source.from.col ?? 0, source.to.col ?? 0);
  const [first, last] = sorted(target.from.row ?? 0, target.to.row ?? 0);
  const from = shown.lines.runs(top, bottom);
  const over = shown.lines.filled(first, last);
  if (over.length === 0) return false;
  if (from.length === 1 && over.length === 1)
    host.fill(
      columns.slice(left, right + 1).map(({ id }) => id),
      from[0]!,
      over[0]!,
    );
  else
    host.failed(
      new Error(
        'Sorted, filtered or grouped rows cannot be filled by dragging. Copy and paste them, or clear sort, filter and groups first.',
      ),
    );
  return false;
}
