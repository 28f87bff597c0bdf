import type Handsontable from 'handsontable/base';
import { Cells } from './cells.ts';
import type { GridHost } from './host.ts';
import { fetchLines } from './lines-tile.ts';
import type { Showing } from './showing.ts';
import { TileCache } from './tiles.ts';

/** What is in view: fetches it, a little ahead of where the view moves to, and draws what arrived. */
export class Looking {
  tiles: TileCache;
  readonly cells: Cells;
  private hot: Handsontable | null = null;
  private frame = 0;
  /** The next frame is to draw the whole sheet, and not only to write its cells anew. */
  private whole = false;
  private last = { top: 0, left: 0 };
  private speed = { down: 0, across: 0 };

  constructor(
    private readonly showing: Showing,
    private readonly host: GridHost,
    /** Whether a cell is pointed at by the formula that is being written. */
    pointed: (line: number, column: number) => boolean,
  ) {
    this.tiles = this.cache();
    this.cells = new Cells(showing, () => this.tiles, pointed);
  }

  begin(hot: Handsontable): void {
    this.hot = hot;
    this.look();
  }

  end(): void {
    cancelAnimationFrame(this.frame);
  }

  /** Fetches by the lines that are shown now; what is held stays where it is, or goes when it is of other lines. */
  renew(others: boolean): void {
    this.tiles = this.cache(others ? undefined : this.tiles);
  }

  scrolled(): void {
    const { hot } = this;
    const top = hot?.getFirstPartiallyVisibleRow() ?? 0;
    const left = hot?.getFirstPartiallyVisibleColumn() ?? 0;
    this.speed = { down: top - this.last.top, across: left - this.last.left };
    this.last = { top, left };
    this.look();
    this.host.shifted();
  }

  /** Fetches what is in view, and further the faster it moves. */
  look(): void {
    const { hot } = this;
    if (!hot) return;
    const { indexes, shown } = this.showing;
    const row = Math.max(hot.getFirstPartiallyVisibleRow() ?? 0, 0);
    const last = hot.getLastPartiallyVisibleRow() ?? row + 40;
    const column = Math.max(hot.getFirstPartiallyVisibleColumn() ?? 0, 0);
    // Some columns past the edge are drawn already.
    const lastColumn = Math.max(hot.getLastRenderedVisibleColumn() ?? column + 12, column);
    const from = indexes[column] ?? 0;
    const to = indexes[lastColumn] ?? indexes.at(-1) ?? from;
    const view = { row, rows: last - row + 1, column: from, columns: to - from + 1 };
    const { down, across } = this.speed;
    const blocks = Math.min(4, 1 + Math.floor(Math.abs(down) / 40));
    // Frozen columns stay in view wherever the rest has scrolled to.
    const frozen = { ...view, column: indexes[0] ?? 0, columns: Math.max(shown.frozen, 1) };
    this.tiles.want([view, frozen], { down: down < 0 ? -blocks : blocks, across: Math.sign(across) });
  }

  /** Writes the cells anew with the next frame; `whole` draws row numbers and layout as well. */
  draw(whole = false): void {
    this.whole ||= whole;
    const { hot } = this;
    if (this.frame || !hot || hot.isDestroyed) return;
    this.frame = requestAnimationFrame(() => {
      this.frame = 0;
      if (this.whole) hot.render();
      else this.cells.refill(hot.rootElement);
      this.whole = false;
      this.look();
      this.host.shifted();
    });
  }

  private cache(old?: TileCache): TileCache {
    const fetch = fetchLines(this.host, this.showing.shown);
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
}
