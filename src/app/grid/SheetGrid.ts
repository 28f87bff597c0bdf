import Handsontable from 'handsontable/base';
import 'handsontable/styles/handsontable.min.css';
import { ManualColumnResize, registerPlugin } from 'handsontable/plugins';
import type { GridSettings } from 'handsontable/settings';
import './grid.css';
import type { ColumnOutline, SheetOutline } from '../../session/api.ts';
import { CellEditor, hostEditor } from './editor.ts';
import { fillHeading } from './headings.ts';
import type { GridHost, GridSelection } from './host.ts';
import { isWrong, writeCell } from './render.ts';
import { TileCache } from './tiles.ts';
import { rowNumberWidth, widthOf } from './widths.ts';

registerPlugin(ManualColumnResize);

const emptyRow: unknown[] = [];
const headingHeight = 54;

/**
 * The grid: shows a window of one sheet and turns what hands do in it into calls of its host. This class and its folder
 * are the only place that knows the grid library.
 */
export class SheetGrid {
  private readonly hot: Handsontable;
  private sheet: SheetOutline;
  private columns: readonly ColumnOutline[] = [];
  /** Index in the sheet of each shown column. */
  private indexes: readonly number[] = [];
  private tiles: TileCache;
  private frame = 0;
  private lastTop = 0;
  private lastLeft = 0;
  private speed = 0;
  private drift = 0;
  private readonly watcher: ResizeObserver;

  constructor(
    element: HTMLElement,
    sheet: SheetOutline,
    private readonly host: GridHost,
  ) {
    this.sheet = sheet;
    this.tiles = this.cacheFor(sheet);
    this.shape(sheet);
    this.hot = new Handsontable(element, this.settings());
    hostEditor(this.hot, {
      editText: (row, column) => host.editText(this.sheet.id, this.columns[column]!.id, row),
      enter: (row, column, rows, columns, text) => {
        const ids = this.columns.slice(column, column + columns).map(({ id }) => id);
        host.enter({ row, columns: ids, texts: Array.from({ length: rows }, () => ids.map(() => text)) });
      },
    });
    this.watcher = new ResizeObserver(() => this.fit());
    this.watcher.observe(element);
    this.look();
  }

  /** Takes in a new state of the sheet, or another sheet. */
  show(sheet: SheetOutline): void {
    const other = sheet.id !== this.sheet.id;
    const before = this.sheet;
    this.sheet = sheet;
    if (other) {
      this.tiles.clear();
      this.tiles = this.cacheFor(sheet);
    } else if (sheet.rows !== before.rows || sheet.columns.length !== before.columns.length)
      this.tiles.clear();
    else this.tiles.expire();
    if (other || this.shape(sheet)) {
      this.shape(sheet);
      this.hot.updateSettings(this.shapeSettings());
      if (other) {
        this.hot.deselectCell();
        this.hot.scrollViewportTo({ row: 0, col: 0 });
      }
    }
    this.look();
  }

  select(row: number, column: string, focus = true): void {
    const index = this.columns.findIndex(({ id }) => id === column);
    if (index < 0) return;
    this.hot.selectCell(Math.min(row, this.hot.countRows() - 1), index, undefined, undefined, true, focus);
  }

  selectColumn(column: string): void {
    const index = this.columns.findIndex(({ id }) => id === column);
    if (index >= 0) this.hot.selectColumns(index);
  }

  focus(): void {
    this.hot.listen();
    if (!this.hot.getSelected()) this.hot.selectCell(0, 0);
    else this.hot.getFocusManager().focusOnHighlightedCell();
  }

  /** Opens the editor of the active cell. */
  edit(): void {
    this.hot.listen();
    const editor = this.hot.getActiveEditor();
    if (editor && !editor.isOpened()) {
      editor.enableFullEditMode();
      editor.beginEditing(null);
    }
  }

  /** Draws again after a change of density or theme. */
  restyle(): void {
    this.hot.updateSettings(this.shapeSettings());
    this.fit();
  }

  destroy(): void {
    cancelAnimationFrame(this.frame);
    this.watcher.disconnect();
    this.hot.destroy();
  }

  private cacheFor(sheet: SheetOutline): TileCache {
    return new TileCache(
      this.host.fetch(sheet),
      () => this.draw(),
      (reason) => this.host.failed(reason),
    );
  }

  /** Works out the shown columns; true when they differ from before. */
  private shape(sheet: SheetOutline): boolean {
    const before = this.columns;
    this.indexes = sheet.columns.flatMap((column, index) => (column.hidden ? [] : [index]));
    this.columns = this.indexes.map((index) => sheet.columns[index]!);
    const same = (a: ColumnOutline, b: ColumnOutline | undefined) =>
      b !== undefined && JSON.stringify(a) === JSON.stringify(b);
    return (
      before.length !== this.columns.length ||
      this.hotRows() !== sheet.rows ||
      this.columns.some((column, index) => !same(column, before[index]))
    );
  }

  private hotRows(): number {
    return this.hot ? this.hot.countRows() : -1;
  }

  private settings(): GridSettings {
    return {
      ...this.shapeSettings(),
      licenseKey: import.meta.env.VITE_GRID_LICENCE_KEY ?? 'non-commercial-and-evaluation',
      themeName: 'ht-theme-leverbook',
      injectCoreCss: false,
      width: '100%',
      height: '100%',
      autoColumnSize: false,
      autoRowSize: false,
      manualColumnResize: true,
      wordWrap: false,
      trimWhitespace: false,
      outsideClickDeselects: false,
      autoWrapRow: false,
      autoWrapCol: false,
      minSpareRows: 0,
      selectionMode: 'range',
      enterMoves: { row: 1, col: 0 },
      renderer: (_hot, td, row, column) => {
        writeCell(td, this.tiles, row, this.indexes[column]!, this.columns[column]!);
      },
      editor: CellEditor as unknown as new (...args: unknown[]) => unknown,
      modifyData: (row, column, holder) => {
        holder.value = this.tiles.text(row, this.indexes[column] ?? 0) ?? '';
      },
      afterRenderer: (td, row, column) => {
        if (isWrong(this.tiles.marks(row, this.indexes[column]!))) td.setAttribute('aria-invalid', 'true');
        else td.removeAttribute('aria-invalid');
      },
      afterGetColHeader: (column, th) => {
        const heading = this.columns[column];
        if (column >= 0 && heading) fillHeading(th, heading);
      },
      beforeChange: () => false,
      beforeCreateRow: () => false,
      beforeCreateCol: () => false,
      beforeKeyDown: (event) => this.key(event),
      beforeColumnResize: (width, column) => {
        const resized = this.columns[column];
        if (resized) this.host.resized(resized, Math.round(width));
        return width;
      },
      afterSelectionEnd: () => this.tellSelection(),
      afterOnCellMouseDown: (event, coords) => {
        if (event.detail === 2 && (coords.row ?? 0) < 0 && (coords.col ?? -1) >= 0) {
          const column = this.columns[coords.col!];
          if (column) this.host.openHeading(column);
        }
      },
      afterOnCellContextMenu: (event, coords) => {
        event.preventDefault();
        const over = (coords.row ?? 0) < 0 ? 'columns' : (coords.col ?? 0) < 0 ? 'rows' : 'cells';
        this.host.menu({ x: event.clientX, y: event.clientY, over });
      },
      afterScrollVertically: () => this.scrolled(),
      afterScrollHorizontally: () => this.scrolled(),
    };
  }

  private shapeSettings(): GridSettings {
    return {
      // One shared empty row, as often as there are rows: the grid counts them and never reads them.
      data: new Array<unknown[]>(this.sheet.rows).fill(emptyRow),
      columns: this.columns.map(() => ({})),
      colWidths: this.columns.map(widthOf),
      colHeaders: () => '',
      columnHeaderHeight: [headingHeight],
      rowHeaders: true,
      rowHeaderWidth: rowNumberWidth(this.sheet.rows),
      fixedColumnsStart: this.columns[0]?.kind === 'text' && this.columns.length > 3 ? 1 : 0,
    };
  }

  private key(event: KeyboardEvent): void {
    const editing = this.hot.getActiveEditor()?.isOpened() ?? false;
    if (editing || event.altKey) return;
    if (event.key === 'Delete' || event.key === 'Backspace') {
      event.stopImmediatePropagation();
      event.preventDefault();
      const selection = this.selection();
      if (selection) this.host.clear(selection);
    }
  }

  private selection(): GridSelection | null {
    const range = this.hot.getSelectedRangeLast();
    if (!range) return null;
    const { row, col } = range.highlight;
    const [top, bottom] = [range.from.row!, range.to.row!].sort((a, b) => a - b) as [number, number];
    const [left, right] = [range.from.col!, range.to.col!].sort((a, b) => a - b) as [number, number];
    const wholeColumns = top < 0 || this.hot.selection.isSelectedByColumnHeader();
    const wholeRows = left < 0 || this.hot.selection.isSelectedByRowHeader();
    const column = this.columns[Math.max(col ?? 0, 0)];
    if (!column) return null;
    return {
      sheet: this.sheet.id,
      what: wholeColumns ? (wholeRows ? 'all' : 'columns') : wholeRows ? 'rows' : 'cells',
      row: Math.max(row ?? 0, 0),
      column: column.id,
      fromRow: Math.max(top, 0),
      toRow: bottom,
      columns: this.columns.slice(Math.max(left, 0), right + 1).map(({ id }) => id),
    };
  }

  private tellSelection(): void {
    this.host.selected(this.selection());
  }

  private fit(): void {
    this.hot.refreshDimensions();
    this.look();
  }

  private scrolled(): void {
    const top = this.hot.getFirstPartiallyVisibleRow() ?? 0;
    const left = this.hot.getFirstPartiallyVisibleColumn() ?? 0;
    this.speed = top - this.lastTop;
    this.drift = left - this.lastLeft;
    this.lastTop = top;
    this.lastLeft = left;
    this.look();
  }

  /** Fetches what is in view, and further the faster it moves. */
  private look(): void {
    const row = this.hot.getFirstPartiallyVisibleRow() ?? 0;
    const last = this.hot.getLastPartiallyVisibleRow() ?? 40;
    const column = this.hot.getFirstPartiallyVisibleColumn() ?? 0;
    const lastColumn = this.hot.getLastPartiallyVisibleColumn() ?? 12;
    const from = this.indexes[Math.max(column, 0)] ?? 0;
    const to = this.indexes[Math.max(lastColumn, 0)] ?? from;
    const view = { row: Math.max(row, 0), rows: last - row + 1, column: from, columns: to - from + 1 };
    const down = Math.sign(this.speed || 1) * Math.min(4, 1 + Math.floor(Math.abs(this.speed) / 40));
    // A frozen first column stays in view wherever the rest has scrolled to.
    const frozen = { ...view, column: this.indexes[0] ?? 0, columns: 1 };
    this.tiles.want([view, frozen], { down, across: Math.sign(this.drift) });
  }

  private draw(): void {
    if (this.frame || this.hot.isDestroyed) return;
    this.frame = requestAnimationFrame(() => {
      this.frame = 0;
      this.hot.render();
      this.look();
    });
  }
}
