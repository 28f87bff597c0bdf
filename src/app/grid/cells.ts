/** The cells that the grid library has drawn. */
import { isWrong, plainCell, writeCell } from './render.ts';
import type { Showing } from './showing.ts';
import type { TileCache } from './tiles.ts';

interface Place {
  readonly line: number;
  readonly column: number;
  /** The classes that were written; others on the cell are the library's. */
  readonly classes: string;
  /** The text, where there is nothing else in the cell. */
  readonly text: string | undefined;
}

/**
 * The cells that the grid library has drawn, and what stands in them. A drawing of the whole sheet costs the library tens
 * of milliseconds, most of them for its layout; where only values came, they are written into the cells that are there.
 */
export class Cells {
  private readonly places = new WeakMap<HTMLTableCellElement, Place>();

  constructor(
    private readonly showing: Showing,
    private readonly tiles: () => TileCache,
    /** Whether a cell is pointed at by the formula that is being written. */
    private readonly pointed: (line: number, column: number) => boolean,
  ) {}

  /** Writes a cell that the library draws. */
  write(td: HTMLTableCellElement, line: number, column: number): void {
    const { shown, columns, indexes } = this.showing;
    const tiles = this.tiles();
    // A sheet with fewer columns comes in while the grid still has its shape of before.
    const of = columns[column];
    if (!of) return;
    writeCell(td, shown, tiles, line, indexes[column]!, of);
    const text = plainCell(shown, tiles, line, indexes[column]!, of)?.text;
    this.places.set(td, { line, column, classes: td.className, text });
  }

  /** What is said of a cell beside its content. */
  sign(td: HTMLTableCellElement, line: number, column: number): void {
    const { shown, indexes } = this.showing;
    const wrong = shown.lines.at(line).is === 'row' && isWrong(this.tiles().marks(line, indexes[column]!));
    if (wrong) td.setAttribute('aria-invalid', 'true');
    else td.removeAttribute('aria-invalid');
    td.classList.toggle('pointed', this.pointed(line, column));
  }

  /** Writes all cells of a grid anew, and leaves its shape and what is chosen alone. */
  refill(root: HTMLElement): void {
    for (const td of root.querySelectorAll('td')) {
      const place = this.places.get(td);
      if (!place) continue;
      const { line, column, classes } = place;
      if (!this.isSame(place)) {
        const own = new Set(classes.split(' '));
        const others = [...td.classList].filter((name) => !own.has(name));
        this.write(td, line, column);
        td.classList.add(...others);
      }
      this.sign(td, line, column);
    }
  }

  private isSame({ line, column, text, classes }: Place): boolean {
    const { shown, columns, indexes } = this.showing;
    const tiles = this.tiles();
    const of = columns[column];
    const now = text === undefined || !of ? undefined : plainCell(shown, tiles, line, indexes[column]!, of);
    return now !== undefined && now.text === text && now.classes === classes;
  }
}
