import Handsontable from 'handsontable/base';
// Not the one that comes minified: its rules are written out for older browsers, and cost every cell three times the time.
import 'handsontable/styles/handsontable.css';
import { Autofill, ManualColumnMove, ManualColumnResize, registerPlugin } from 'handsontable/plugins';
import type { GridSettings } from 'handsontable/settings';
import './grid.css';
import { CellMark, type ColumnOutline } from '../../session/api.ts';
import { Cells } from './cells.ts';
import { blockOf, chooseAgain, readChosen, sorted } from './chosen.ts';
import { CellEditor, hostEditor } from './editor.ts';
import { fillHeading } from './headings.ts';
import type { GridHost, GridSelection, Shown } from './host.ts';
import { fetchLines } from './lines-tile.ts';
import { Pointer } from './pointer.ts';
import { TileCache } from './tiles.ts';
import { rowNumberWidth, widthOf } from './widths.ts';

for (const plugin of [Autofill, ManualColumnMove, ManualColumnResize]) registerPlugin(plugin);

/** One empty row, shared: the grid counts its rows and never reads them. */
const emptyRow: unknown[] = [];
const headingHeight = 64;

/**
 * The grid: shows a window of one sheet and turns what hands do in it into calls of its host. This class and its folder
 * are the only place that knows the grid library.
 */
export class SheetGrid {
  private readonly hot: Handsontable;
  private readonly host: GridHost;
  private readonly pointer: Pointer;
  private readonly cells: Cells;
  private readonly watcher: ResizeObserver;
  private shown: Shown;
  private tiles: TileCache;
  private columns: readonly ColumnOutline[] = [];
  /** Index in the sheet of each shown column. */
  private indexes: readonly number[] = [];
  private frame = 0;
  /** The next frame is to draw the whole sheet, and not only to write its cells anew. */
  private whole = false;
  private last = { top: 0, left: 0 };
  private speed = { down: 0, across: 0 };
  /** What was to be chosen and is not on show yet. */
  private wish: (() => void) | null = null;

  constructor(
    private readonly element: HTMLElement,
    shown: Shown,
    host: GridHost,
  ) {
    this.host = host;
    this.shown = shown;
    this.pointer = new Pointer(
      host,
      (line, column) => this.choose(line, column),
      () => this.draw(),
    );
    this.cells = this.sources();
    this.tiles = this.cache();
    this.chooseColumns();
    this.hot = new Handsontable(element, this.settings());
    hostEditor(this.hot, {
      editText: async (line, column) => {
        const at = this.shown.lines.at(line);
        return at.is === 'row' ? host.editText(this.shown.sheet.id, this.columns[column]!.id, at.row) : '';
      },
      hasFormula: (line, column) =>
        (this.tiles.marks(line, this.indexes[column]!) & (CellMark.formula | CellMark.computed)) !== 0,
      choices: (column) => choicesOf(this.columns[column]!),
      enter: (line, column, lines, columns, text) => {
        const ids = this.columns.slice(column, column + columns).map(({ id }) => id);
        const runs = this.shown.lines.runs(line, line + lines - 1);
        const rows = runs.reduce((all, { count }) => all + count, 0);
        const texts = Array.from({ length: rows }, () => ids.map(() => text));
        this.goOnBelow(line + lines - 1);
        host.enter({ runs, columns: ids, texts, formulas: true });
      },
      writeFormula: (text) => host.writeFormula(text),
    });
    this.enterByTab(element);
    this.watcher = new ResizeObserver(() => this.fit());
    this.watcher.observe(element);
    document.addEventListener('copy', this.copied);
    document.addEventListener('cut', this.copied);
    document.addEventListener('paste', this.pasted);
    this.look();
  }

  /** Takes in a new state of the sheet, another view of it, or another sheet. */
  show(shown: Shown): void {
    const before = this.shown;
    const chosen = this.selection();
    const block = blockOf(this.hot);
    const other = shown.sheet.id !== before.sheet.id;
    this.shown = other ? shown : withRowsAhead(shown, before);
    const order = ({ sheet }: Shown) => sheet.columns.map(({ id }) => id).join();
    const reordered = order(shown) !== order(before);
    const moved = other || shown.lines !== before.lines || reordered;
    const lined = moved && (other || !shown.lines.plain || !before.lines.plain);
    if (moved) {
      // Rows that only came or went at the end leave the blocks where they are; anything else makes them untrue.
      if (lined || reordered) this.tiles.clear();
      this.tiles = this.cache(lined ? undefined : this.tiles);
    }
    this.tiles.expire(shown.version);
    // What is chosen may be of the sheet before, or lie past the end of the new shape: the grid must not look for it there.
    const columnsBefore = this.columns.length;
    const reshaped = this.chooseColumns();
    if (other || this.shown.lines.count < before.lines.count || this.columns.length < columnsBefore)
      this.hot.deselectCell();
    if (reshaped || this.shown.lines.count !== before.lines.count || shown.frozen !== before.frozen)
      this.reshape();
    else if (lined) this.draw(true);
    else if (shown.summaries !== before.summaries) this.draw();
    this.keepClear();
    if (other) this.hot.scrollViewportTo({ row: 0, col: 0 });
    else if (chosen && block && (moved || reshaped)) {
      const again = chooseAgain(this.hot, chosen, block, this.shown, this.columns);
      if (!again) this.host.selected(this.selection());
    }
    this.wish?.();
    this.look();
  }

  /** Chooses a cell; one that is not on show yet is chosen when it is. */
  select(row: number, column: string, focus = true): void {
    const index = this.columns.findIndex(({ id }) => id === column);
    const line = this.shown.lines.lineOf(row);
    const there = index >= 0 && line !== undefined && line < this.shown.lines.count;
    this.wish = there ? null : () => this.select(row, column, focus);
    if (there) this.hot.selectCell(line, index, undefined, undefined, true, focus);
  }

  /** Chooses a column and brings it into view; one that is not on show yet is chosen when it is. */
  selectColumn(column: string): void {
    const index = this.columns.findIndex(({ id }) => id === column);
    this.wish = index < 0 ? () => this.selectColumn(column) : null;
    if (index < 0) return;
    this.hot.selectColumns(index);
    this.hot.scrollViewportTo({ col: index });
  }

  /** Chooses the cell that many lines below the active one, or columns to its right. */
  step(down: number, across: number): void {
    const at = this.hot.getSelectedRangeLast()?.highlight;
    if (!at) return;
    const within = (to: number, count: number) => Math.max(0, Math.min(to, count - 1));
    this.choose(
      within((at.row ?? 0) + down, this.hot.countRows()),
      within((at.col ?? 0) + across, this.hot.countCols()),
    );
  }

  private choose(line: number, column: number): void {
    if (line < 0 && column < 0) this.hot.selection.selectAll();
    else if (line < 0) this.hot.selectColumns(column);
    else if (column < 0) this.hot.selectRows(line);
    else this.hot.selectCell(line, column);
    this.focus();
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
    this.reshape();
    this.fit();
  }

  destroy(): void {
    cancelAnimationFrame(this.frame);
    this.watcher.disconnect();
    this.element.removeEventListener('focusin', this.heard);
    document.removeEventListener('copy', this.copied);
    document.removeEventListener('cut', this.copied);
    document.removeEventListener('paste', this.pasted);
    this.hot.destroy();
  }

  private sources(): Cells {
    const grid = this;
    return new Cells({
      get shown() {
        return grid.shown;
      },
      get tiles() {
        return grid.tiles;
      },
      get columns() {
        return grid.columns;
      },
      get indexes() {
        return grid.indexes;
      },
      pointed: (line, column) => this.pointer.covers(line, column),
    });
  }

  /** Asks for what is in view anew, when values are on their way that the page has not heard of yet. */
  refresh(): void {
    this.tiles.expire();
    this.look();
  }

  private cache(old?: TileCache): TileCache {
    const fetch = fetchLines(this.host, this.shown);
    if (old) {
      old.fetch = fetch;
      return old;
    }
    return new TileCache(
      fetch,
      () => this.draw(),
      (reason) => this.host.failed(reason),
    );
  }

  /** Works out the shown columns; true when they differ from before. */
  private chooseColumns(): boolean {
    const before = this.columns;
    const { columns } = this.shown.sheet;
    this.indexes = columns.flatMap((column, index) => (column.hidden ? [] : [index]));
    this.columns = this.indexes.map((index) => columns[index]!);
    return before.length !== this.columns.length || JSON.stringify(before) !== JSON.stringify(this.columns);
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
      manualColumnMove: true,
      fillHandle: { direction: 'vertical', autoInsertRow: false },
      wordWrap: false,
      trimWhitespace: false,
      outsideClickDeselects: false,
      autoWrapRow: false,
      autoWrapCol: false,
      selectionMode: 'range',
      enterMoves: { row: 1, col: 0 },
      renderer: (_hot, td, line, column) => this.cells.write(td, line, column),
      editor: CellEditor as unknown as new (...args: unknown[]) => unknown,
      modifyData: (line, column, holder) => {
        holder.value = this.tiles.text(line, this.indexes[column] ?? 0) ?? '';
      },
      afterRenderer: (td, line, column) => this.cells.sign(td, line, column),
      afterGetColHeader: (column, th) => {
        const heading = this.columns[column];
        if (column < 0 || !heading) return;
        fillHeading(th, heading);
        // The library counts from the first heading in view; the row numbers are the first column.
        th.setAttribute('aria-colindex', String(column + 2));
      },
      // What would change the grid becomes a call of the host, and the grid itself stays as it is.
      beforeChange: () => false,
      beforeCreateRow: () => false,
      beforeCreateCol: () => false,
      beforeBeginEditing: (line) => (this.shown.lines.at(line).is === 'summary' ? false : undefined),
      beforeAutofill: (_data, source, target) => this.pulled(source, target) as unknown as undefined,
      beforeColumnMove: (moved, to) => {
        this.host.moved(
          moved.map((index) => this.columns[index]!),
          this.columns.filter((_, index) => !moved.includes(index))[to] ?? null,
        );
        return false;
      },
      beforeColumnResize: (width, column) => {
        const resized = this.columns[column];
        if (resized) this.host.resized(resized, Math.round(width));
        return width;
      },
      beforeKeyDown: (event) => (this.key(event) ? false : undefined),
      afterSelectionEnd: () => this.host.selected(this.selection()),
      beforeOnCellMouseDown: (event, coords) => this.pointer.down(event, coords, this.shown, this.columns),
      beforeOnCellMouseOver: (event, coords) => this.pointer.over(event, coords),
      beforeOnCellMouseUp: (event) => this.pointer.up(event),
      afterOnCellMouseDown: (event, coords) => {
        const column = this.columns[coords.col ?? -1];
        if (event.detail === 2 && (coords.row ?? 0) < 0 && column) this.host.openHeading(column);
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

  /** The library would draw once for the rows and once more for the rest. */
  private reshape(): void {
    this.hot.batchRender(() => this.hot.updateSettings(this.shapeSettings()));
  }

  private shapeSettings(): GridSettings {
    const { lines, frozen } = this.shown;
    return {
      data: new Array<unknown[]>(lines.count).fill(emptyRow),
      columns: this.columns.map(() => ({})),
      colWidths: this.columns.map(widthOf),
      // Headings are nodes of our own (see headings.ts); the library would write texts as markup.
      colHeaders: () => '',
      columnHeaderHeight: [headingHeight],
      rowHeaders: (line: number) => this.numberOf(line),
      rowHeaderWidth: rowNumberWidth(lines.total),
      fixedColumnsStart: Math.min(frozen, this.columns.length),
      fixedRowsBottom: lines.summed ? 1 : 0,
    };
  }

  /** The browser scrolls to what it is told to show; row numbers and frozen columns lie over the start of what scrolls. */
  private keepClear(): void {
    const { lines, frozen } = this.shown;
    const over = this.columns
      .slice(0, frozen)
      .reduce((sum, of) => sum + widthOf(of), rowNumberWidth(lines.total));
    const holder = this.hot.rootElement.querySelector<HTMLElement>('.ht_master .wtHolder');
    if (holder) holder.style.scrollPaddingInlineStart = `${over}px`;
  }

  private numberOf(line: number): string {
    const at = this.shown.lines.at(line);
    return at.is === 'row' ? String(at.row + 1) : at.is === 'new' ? '+' : 'Σ';
  }

  /** The last blank line was filled in: another stands below it at once, so that Enter goes on there however fast one types. */
  private goOnBelow(line: number): void {
    const { lines } = this.shown;
    if (lines.at(line).is !== 'new' || line !== lines.total + lines.ahead) return;
    this.shown = { ...this.shown, lines: lines.withAhead(lines.ahead + 1) };
    this.reshape();
  }

  /** Keys that mean something else here than to the library, and those that are not for the grid. True for such a key. */
  private key(event: KeyboardEvent): boolean {
    // The library listens to the whole document once it was clicked on: what is typed elsewhere is not for the sheet, nor
    // is a key that was pressed elsewhere and closed what it was pressed in, so that the sheet has the focus by now.
    if (!this.hasFocus() || !this.isHere(event.target)) return true;
    const mine = this.ownKey(event);
    if (mine) {
      event.stopImmediatePropagation();
      event.preventDefault();
    }
    return mine;
  }

  private ownKey(event: KeyboardEvent): boolean {
    const editor = this.hot.getActiveEditor() as unknown as CellEditor | undefined;
    if (editor?.isOpened()) return editor.picked(event) || this.downFromHeading(editor, event);
    const selection = event.altKey ? null : this.selection();
    if (!selection) return false;
    const mod = event.ctrlKey || event.metaKey;
    if (event.key === 'Home') this.toStart(mod, event.shiftKey);
    else if (mod) return false;
    else if (event.key === 'Delete' || event.key === 'Backspace') this.host.clear(selection);
    else if (event.key === '=') this.host.writeFormula('=');
    else return false;
    return true;
  }

  /** Typing down a column that was chosen by its heading goes on below, and not round and round in what is chosen. */
  private downFromHeading(
    editor: CellEditor,
    { key, ctrlKey, metaKey, altKey, shiftKey }: KeyboardEvent,
  ): boolean {
    if (key !== 'Enter' || ctrlKey || metaKey || altKey || !this.hot.selection.isSelectedByAnyHeader())
      return false;
    editor.finishEditing();
    this.step(shiftKey ? -1 : 1, 0);
    return true;
  }

  /** To the first column, and with `top` to the first row: frozen columns are columns like others, and the rest scrolls back. */
  private toStart(top: boolean, extend: boolean): void {
    const range = this.hot.getSelectedRangeLast();
    if (!range) return;
    const line = top ? 0 : Math.max((extend ? range.to.row : range.highlight.row) ?? 0, 0);
    if (extend) this.hot.selectCell(range.from.row ?? 0, range.from.col ?? 0, line, 0, false);
    else this.hot.selectCell(line, 0, undefined, undefined, false);
    this.hot.scrollViewportTo({
      row: line,
      col: Math.min(this.shown.frozen, this.columns.length - 1),
      horizontalSnap: 'start',
    });
  }

  private selection(): GridSelection | null {
    return readChosen(this.hot, this.shown, this.columns);
  }

  /** The fill handle was let go: rows of the source go over the rows of the target. */
  private pulled(
    source: {
      from: { row: number | null; col: number | null };
      to: { row: number | null; col: number | null };
    },
    target: typeof source,
  ): false {
    const [top, bottom] = sorted(source.from.row ?? 0, source.to.row ?? 0);
    const [left, right] = sorted(source.from.col ?? 0, source.to.col ?? 0);
    const [first, last] = sorted(target.from.row ?? 0, target.to.row ?? 0);
    const from = this.shown.lines.runs(top, bottom);
    const over = this.shown.lines.runs(first, last);
    if (from.length === 1 && over.length === 1)
      this.host.fill(
        this.columns.slice(left, right + 1).map(({ id }) => id),
        from[0]!,
        over[0]!,
      );
    else
      this.host.failed(
        new Error(
          'Rows that a view has put out of order cannot be filled by pulling. Copy and paste them, or take the view off.',
        ),
      );
    return false;
  }

  private readonly heard = (): void => this.hot.listen();

  private readonly copied = (event: ClipboardEvent): void => {
    const selection = this.takesKeys() ? this.selection() : null;
    if (selection) this.host.copy(selection, event.type === 'cut', event);
  };

  private readonly pasted = (event: ClipboardEvent): void => {
    if (!this.takesKeys()) return;
    event.preventDefault();
    this.host.paste(event.clipboardData?.getData('text/plain') ?? '');
  };

  /** True while the keyboard belongs to the grid and no cell is being edited. */
  private takesKeys(): boolean {
    return this.hot.isListening() && !this.hot.getActiveEditor()?.isOpened() && this.hasFocus();
  }

  /** True for what lies in the sheet, and for the page as a whole, which has the focus when nothing else has. */
  private isHere(target: EventTarget | null): boolean {
    return target === document.body || (target instanceof Node && this.hot.rootElement.contains(target));
  }

  private hasFocus(): boolean {
    const { activeElement } = document;
    return this.hot.rootElement.contains(activeElement) || activeElement === document.body;
  }

  /**
   * The library keeps its scrolling box out of the order of Tab, in a way that makes it no proper part of a grid. Here it
   * is one stop of Tab, and hands the focus on to the active cell.
   */
  private enterByTab(element: HTMLElement): void {
    // However the focus came to a cell, the keys are the grid's from then on.
    element.addEventListener('focusin', this.heard);
    for (const box of element.querySelectorAll<HTMLElement>('.wtHolder')) {
      box.removeAttribute('tabindex');
      box.addEventListener('focus', () => this.focus());
    }
  }

  private fit(): void {
    this.hot.refreshDimensions();
    this.look();
  }

  private scrolled(): void {
    const top = this.hot.getFirstPartiallyVisibleRow() ?? 0;
    const left = this.hot.getFirstPartiallyVisibleColumn() ?? 0;
    this.speed = { down: top - this.last.top, across: left - this.last.left };
    this.last = { top, left };
    this.look();
  }

  /** Fetches what is in view, and further the faster it moves. */
  private look(): void {
    const row = Math.max(this.hot.getFirstPartiallyVisibleRow() ?? 0, 0);
    const last = this.hot.getLastPartiallyVisibleRow() ?? row + 40;
    const column = Math.max(this.hot.getFirstPartiallyVisibleColumn() ?? 0, 0);
    // Some columns past the edge are drawn already.
    const lastColumn = Math.max(this.hot.getLastRenderedVisibleColumn() ?? column + 12, column);
    const from = this.indexes[column] ?? 0;
    const to = this.indexes[lastColumn] ?? this.indexes.at(-1) ?? from;
    const view = { row, rows: last - row + 1, column: from, columns: to - from + 1 };
    const { down, across } = this.speed;
    const blocks = Math.min(4, 1 + Math.floor(Math.abs(down) / 40));
    // Frozen columns stay in view wherever the rest has scrolled to.
    const frozen = { ...view, column: this.indexes[0] ?? 0, columns: Math.max(this.shown.frozen, 1) };
    this.tiles.want([view, frozen], { down: down < 0 ? -blocks : blocks, across: Math.sign(across) });
  }

  /** Writes the cells anew with the next frame; `whole` draws row numbers and layout as well. */
  private draw(whole = false): void {
    this.whole ||= whole;
    if (this.frame || this.hot.isDestroyed) return;
    this.frame = requestAnimationFrame(() => {
      this.frame = 0;
      if (this.whole) this.hot.render();
      else this.cells.refill(this.hot.rootElement);
      this.whole = false;
      this.look();
    });
  }
}

/** Rows that came in the meantime take the place of blank ones that stood ahead of them; when rows went, none stand. */
function withRowsAhead(shown: Shown, before: Shown): Shown {
  const came = shown.lines.total - before.lines.total;
  const ahead = came < 0 ? 0 : before.lines.ahead - came;
  return ahead > 0 ? { ...shown, lines: shown.lines.withAhead(ahead) } : shown;
}

function choicesOf({ kind, choices, formula }: ColumnOutline): readonly string[] | null {
  if (formula !== undefined) return null;
  if (kind === 'choice') return choices ?? [];
  return kind === 'yes-no' ? ['yes', 'no'] : null;
}
