import Handsontable from 'handsontable/base';
// Not the one that comes minified: its rules are written out for older browsers, and cost every cell three times the time.
import 'handsontable/styles/handsontable.css';
import { Autofill, ManualColumnMove, ManualColumnResize, registerPlugin } from 'handsontable/plugins';
import './grid.css';
import { hostEditor } from './cell-editor.ts';
import { blockOf, chooseAgain, readChosen } from './chosen.ts';
import { listenToClipboard } from './grid-clipboard.ts';
import { entering } from './grid-entering.ts';
import { GridKeys } from './grid-keys.ts';
import type { GridHost, GridSelection, Shown } from './host.ts';
import { Looking } from './looking.ts';
import { Pointer } from './pointer.ts';
import { Reach } from './reach.ts';
import { settingsOf, shapeOf } from './settings.ts';
import { Showing, withRowsAhead } from './showing.ts';
import { rowNumberWidth, widthOf } from './widths.ts';

for (const plugin of [Autofill, ManualColumnMove, ManualColumnResize]) registerPlugin(plugin);

/**
 * The grid: shows a window of one sheet and turns what hands do in it into calls of its host. This class and its folder
 * are the only place that knows the grid library.
 */
export class SheetGrid {
  private readonly hot: Handsontable;
  private readonly showing: Showing;
  private readonly looking: Looking;
  private readonly pointer: Pointer;
  private readonly reach: Reach;
  private readonly watcher: ResizeObserver;
  private readonly endClipboard: () => void;
  /** What was to be chosen and is not on show yet. */
  private wish: (() => void) | null = null;

  constructor(
    private readonly element: HTMLElement,
    shown: Shown,
    private readonly host: GridHost,
  ) {
    this.showing = new Showing(shown);
    this.looking = new Looking(this.showing, host, (line, column) => this.pointer.covers(line, column));
    this.pointer = new Pointer(
      host,
      this.showing,
      (line, column) => this.choose(line, column),
      () => this.looking.draw(),
    );
    const { showing, looking, pointer } = this;
    const selection = () => this.selection();
    const key = (event: KeyboardEvent) => keys.take(event);
    this.hot = new Handsontable(element, settingsOf({ showing, looking, pointer, host, key, selection }));
    this.reach = new Reach(this.hot.rootElement);
    const { reach } = this;
    const keys = new GridKeys(this.hot, reach, showing, host, selection, (down, across) =>
      this.step(down, across),
    );
    hostEditor(
      this.hot,
      entering(showing, looking, host, (line) => this.goOnBelow(line)),
    );
    this.enterByTab(element);
    this.watcher = new ResizeObserver(() => this.fit());
    this.watcher.observe(element);
    this.endClipboard = listenToClipboard(this.hot, host, selection, () => reach.hasKeys());
    looking.begin(this.hot);
  }

  /** Takes in a new state of the sheet, another view of it, or another sheet. */
  show(shown: Shown): void {
    const { showing, looking } = this;
    const before = showing.shown;
    const chosen = this.selection();
    const block = blockOf(this.hot);
    const other = shown.sheet.id !== before.sheet.id;
    showing.shown = other ? shown : withRowsAhead(shown, before);
    const { lines } = showing.shown;
    const order = ({ sheet }: Shown) => sheet.columns.map(({ id }) => id).join();
    const reordered = order(shown) !== order(before);
    const moved = other || shown.lines !== before.lines || reordered;
    const lined = moved && (other || !shown.lines.plain || !before.lines.plain);
    if (moved) {
      // Rows that only came or went at the end leave the blocks where they are; anything else makes them untrue.
      if (lined || reordered) looking.tiles.clear();
      looking.renew(lined);
    }
    looking.tiles.expire(shown.version);
    // What is chosen may be of the sheet before, or lie past the end of the new shape: the grid must not look for it there.
    const columnsBefore = showing.columns.length;
    const reshaped = showing.chooseColumns();
    // Nor among the frozen columns before they are drawn.
    const refrozen = shown.frozen !== before.frozen;
    if (other || refrozen || lines.count < before.lines.count || showing.columns.length < columnsBefore)
      this.hot.deselectCell();
    if (reshaped || lines.count !== before.lines.count || refrozen) this.reshape();
    // A blank line that has become a row is one more row on as many lines; its values may be here already.
    else if (moved) looking.draw(true);
    else if (shown.summaries !== before.summaries) looking.draw();
    this.keepClear();
    if (other) this.hot.scrollViewportTo({ row: 0, col: 0 });
    else if (chosen && block && (moved || reshaped || refrozen)) {
      const again = chooseAgain(this.hot, chosen, block, showing.shown, showing.columns);
      if (!again) this.host.selected(this.selection());
    }
    this.wish?.();
    looking.look();
  }

  /** Chooses a cell; one that is not on show yet is chosen when it is. */
  select(row: number, column: string, focus = true): void {
    const spot = this.showing.spotOf(row, column);
    this.wish = spot ? null : () => this.select(row, column, focus);
    if (spot) this.hot.selectCell(spot.line, spot.column, undefined, undefined, true, focus);
  }

  /** Chooses a column and brings it into view; one that is not on show yet is chosen when it is. */
  selectColumn(column: string): void {
    const index = this.showing.columns.findIndex(({ id }) => id === column);
    this.wish = index < 0 ? () => this.selectColumn(column) : null;
    if (index < 0) return;
    this.hot.selectColumns(index);
    this.hot.scrollViewportTo({ col: index });
  }

  /**
   * Chooses the cell that many lines below the active one, or columns to its right. Where something was written into that
   * one there may have to be another blank line below it.
   */
  step(down: number, across: number, written = false): void {
    const at = this.hot.getSelectedRangeLast()?.highlight;
    if (!at) return;
    if (written) this.goOnBelow(at.row ?? 0);
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

  /** Gives the sheet the keys; not while something is over it that does not go right now. */
  focus(): void {
    if (this.reach.isOnScreen()) this.focusNow();
    else
      requestAnimationFrame(() => {
        if (!this.hot.isDestroyed && this.reach.isOnScreen()) this.focusNow();
      });
  }

  private focusNow(): void {
    this.hot.listen();
    if (!this.hot.getSelected()) this.hot.selectCell(0, 0);
    else this.hot.getFocusManager().focusOnHighlightedCell();
    // A click on a button that led here reaches the library only now: it takes one beside the grid for leaving it.
    setTimeout(() => {
      if (this.hot.isDestroyed || !this.hot.rootElement.contains(document.activeElement)) return;
      this.hot.listen();
      this.hot.getFocusScopeManager().activateScope('grid');
    });
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

  /** Where a cell stands in the window; null for one that is not drawn. */
  boxOf(row: number, column: string): DOMRect | null {
    const spot = this.showing.spotOf(row, column);
    return (spot && this.hot.getCell(spot.line, spot.column, true)?.getBoundingClientRect()) ?? null;
  }

  /**
   * Points at the next cell for a formula that is being written: next to the one pointed at last, at first to the formula's
   * own. With `extend` it pulls on from there.
   */
  pointOn(own: { row: number; column: string }, down: number, across: number, extend: boolean): void {
    const at = this.hot.getSelectedRangeLast()?.highlight;
    const from = this.showing.spotOf(own.row, own.column) ?? { line: at?.row ?? 0, column: at?.col ?? 0 };
    const end = this.pointer.arrow(from, down, across, extend);
    if (end) this.hot.scrollViewportTo({ row: end.line, col: end.column });
  }

  /** What was pointed at stands in the formula, and more is written. */
  pointNoMore(): void {
    this.pointer.rest();
  }

  /** Chooses a block from a cell on: so many of the lines and columns that are on show. */
  selectBlock(row: number, column: string, lines: number, columns: number): void {
    const spot = this.showing.spotOf(row, column);
    const { shown } = this.showing;
    // Its last rows may only just have been made.
    const there = spot && (!shown.lines.plain || spot.line + lines <= shown.lines.count);
    this.wish = there ? null : () => this.selectBlock(row, column, lines, columns);
    if (!there) return;
    const bottom = Math.min(spot.line + lines, this.hot.countRows()) - 1;
    const right = Math.min(spot.column + columns, this.hot.countCols()) - 1;
    this.hot.selectCell(spot.line, spot.column, bottom, right, false);
  }

  /** Asks for what is in view anew, when values are on their way that the page has not heard of yet. */
  refresh(): void {
    this.looking.tiles.expire();
    this.looking.look();
  }

  /** Draws again after a change of density or theme. */
  restyle(): void {
    this.reshape();
    this.fit();
  }

  destroy(): void {
    this.looking.end();
    this.watcher.disconnect();
    this.element.removeEventListener('focusin', this.heard);
    this.endClipboard();
    this.reach.end();
    this.hot.destroy();
  }

  /** The library would draw once for the rows and once more for the rest. */
  private reshape(): void {
    this.hot.batchRender(() => this.hot.updateSettings(shapeOf(this.showing)));
  }

  /** The browser scrolls to what it is told to show; row numbers and frozen columns lie over the start of what scrolls. */
  private keepClear(): void {
    const { shown, columns } = this.showing;
    const over = columns
      .slice(0, shown.frozen)
      .reduce((sum, of) => sum + widthOf(of), rowNumberWidth(shown.lines.total));
    const holder = this.hot.rootElement.querySelector<HTMLElement>('.ht_master .wtHolder');
    if (holder) holder.style.scrollPaddingInlineStart = `${over}px`;
  }

  /** The last blank line was filled in: another stands below it at once, so that Enter goes on there however fast one types. */
  private goOnBelow(line: number): void {
    const { shown } = this.showing;
    const { lines } = shown;
    if (lines.at(line).is !== 'new' || line !== lines.total + lines.ahead) return;
    this.showing.shown = { ...shown, lines: lines.withAhead(lines.ahead + 1) };
    this.reshape();
  }

  private selection(): GridSelection | null {
    return readChosen(this.hot, this.showing.shown, this.showing.columns);
  }

  private readonly heard = (): void => this.hot.listen();

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
    this.looking.look();
    this.host.shifted();
  }
}
