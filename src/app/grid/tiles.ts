import type { Tile } from '../../session/api.ts';
import type { Drawing } from '../../session/marks/drawings.ts';

/** Rows and columns of one tile: a screen of a desk monitor is about two by two of them. */
const tileRows = 64;
const tileColumns = 12;
/** Tiles kept: at about 1,000 short texts each, some 15 MB at most. */
const kept = 160;
/** Requests under way at once; the worker answers one after another, so more would only grow old in the queue. */
const abreast = 4;
/** More blocks across than any sheet has: a block's key is row block × this + column block. */
const columnBlocks = 4096;

interface Held {
  tile: Tile | null;
  /** Older than the last change; still shown until the new one is there. */
  stale: boolean;
  asked: boolean;
}

export interface Viewport {
  readonly row: number;
  readonly rows: number;
  readonly column: number;
  readonly columns: number;
}

export type FetchTile = (row: number, rows: number, column: number, columns: number) => Promise<Tile>;

/**
 * The part of a sheet that the page holds: texts and marks in blocks, fetched when they come into view and a little ahead
 * of that. Nothing is computed here. Old blocks stay on show until their successors arrive.
 */
export class TileCache {
  private readonly tiles = new Map<number, Held>();
  private queue: number[] = [];
  private underWay = 0;
  private epoch = 0;

  constructor(
    public fetch: FetchTile,
    private readonly arrived: (key: number) => void,
    private readonly failed: (reason: unknown) => void,
  ) {}

  text(row: number, column: number): string | undefined {
    const tile = this.tileAt(row, column);
    return tile?.texts[this.place(tile, row, column)];
  }

  marks(row: number, column: number): number {
    const tile = this.tileAt(row, column);
    return tile?.marks[this.place(tile, row, column)] ?? 0;
  }

  /** What can be chosen in a cell of its own. */
  choices(row: number, column: number): readonly string[] | undefined {
    const tile = this.tileAt(row, column);
    return tile?.offers?.find((one) => one.row === row - tile.row && one.column === column)?.choices;
  }

  /** What the marks of a column draw into its cells here, and which of them the row's is. */
  drawing(row: number, column: number): { readonly drawing: Drawing; readonly at: number } | undefined {
    const tile = this.tileAt(row, column);
    const drawing = tile?.drawings?.find((one) => one.column === column);
    return tile && drawing && { drawing, at: row - tile.row };
  }

  /** True when the cell's block is there, whether or not it is of the last version. */
  has(row: number, column: number): boolean {
    return this.tileAt(row, column) !== undefined;
  }

  /** Something changed: blocks of a version before this one are fetched anew when next wanted. */
  expire(version = Number.POSITIVE_INFINITY): void {
    for (const held of this.tiles.values()) {
      if (held.tile && held.tile.version >= version) continue;
      held.stale = true;
      held.asked = false;
    }
  }

  /** Rows or columns changed places: nothing held is true any more. */
  clear(): void {
    this.epoch++;
    this.underWay = 0;
    this.tiles.clear();
    this.queue = [];
  }

  /**
   * Says what is in view, most wanted first, and in which direction the first view moves: `ahead` further blocks are
   * fetched there. What was wanted before and is not any more is dropped from the queue.
   */
  want(views: readonly Viewport[], ahead: { down: number; across: number }): void {
    const wanted = new Set<number>();
    const add = (rows: Span, columns: Span) => {
      for (let r = Math.max(rows.from, 0); r <= rows.to; r++)
        for (let c = Math.max(columns.from, 0); c <= columns.to; c++) wanted.add(r * columnBlocks + c);
    };
    views.forEach((view, index) => {
      const rows = span(view.row, view.rows, tileRows);
      const columns = span(view.column, view.columns, tileColumns);
      add(rows, columns);
      if (index > 0) return;
      if (ahead.down) add(beyond(rows, ahead.down), columns);
      if (ahead.across) add(rows, beyond(columns, ahead.across));
    });
    this.queue = [...wanted].filter((key) => {
      const held = this.tiles.get(key);
      if (held) this.touch(key, held);
      return !held || (!held.asked && (held.stale || !held.tile));
    });
    this.pump();
  }

  private pump(): void {
    while (this.underWay < abreast) {
      const key = this.queue.shift();
      if (key === undefined) return;
      void this.ask(key);
    }
  }

  private async ask(key: number): Promise<void> {
    const held = this.tiles.get(key) ?? { tile: null, stale: true, asked: false };
    held.asked = true;
    held.stale = false;
    this.touch(key, held);
    const epoch = this.epoch;
    this.underWay++;
    try {
      const row = Math.floor(key / columnBlocks) * tileRows;
      const column = (key % columnBlocks) * tileColumns;
      const tile = await this.fetch(row, tileRows, column, tileColumns);
      if (epoch !== this.epoch) return;
      held.tile = tile;
      held.asked = false;
      this.forget();
      this.arrived(key);
    } catch (reason) {
      if (epoch !== this.epoch) return;
      held.asked = false;
      held.stale = true;
      this.failed(reason);
    } finally {
      if (epoch === this.epoch) {
        this.underWay--;
        this.pump();
      }
    }
  }

  /** Moves to the young end of the map, which keeps insertion order. */
  private touch(key: number, held: Held): void {
    this.tiles.delete(key);
    this.tiles.set(key, held);
  }

  private forget(): void {
    for (const [key, held] of this.tiles) {
      if (this.tiles.size <= kept) return;
      if (!held.asked) this.tiles.delete(key);
    }
  }

  private tileAt(row: number, column: number): Tile | undefined {
    const key = Math.floor(row / tileRows) * columnBlocks + Math.floor(column / tileColumns);
    const tile = this.tiles.get(key)?.tile;
    return tile && row < tile.row + tile.rows && column < tile.column + tile.columns ? tile : undefined;
  }

  private place(tile: Tile, row: number, column: number): number {
    return (row - tile.row) * tile.columns + (column - tile.column);
  }
}

interface Span {
  readonly from: number;
  readonly to: number;
}

const span = (from: number, count: number, size: number): Span => ({
  from: Math.floor(from / size),
  to: Math.floor((from + Math.max(count, 1) - 1) / size),
});

/** The next `count` blocks after the span, or before it when negative. */
const beyond = ({ from, to }: Span, count: number): Span =>
  count > 0 ? { from: to + 1, to: to + count } : { from: from + count, to: from - 1 };
