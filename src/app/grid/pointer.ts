/** What pointer and touch do in the grid. */
import type { ColumnOutline } from '../../session/api.ts';
import type { GridHost, Shown } from './host.ts';
import type { Showing } from './showing.ts';

interface Spot {
  readonly row: number | null;
  readonly col: number | null;
}

export interface GridSpot {
  readonly line: number;
  readonly column: number;
}

/** Where pointing began, and what the grid showed then. */
interface Start extends GridSpot {
  readonly shown: Shown;
  readonly columns: readonly ColumnOutline[];
}

interface Block {
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}

/**
 * Clicks, pulls and arrow keys over the grid while a formula is being written: they put names into it where a name can
 * stand, each place pointed at taking the place of the one before. Where none can, a click has the formula taken first
 * and then chooses; what is refused stays in hand. Either way nothing that was written is lost.
 */
export class Pointer {
  /** Where the mouse began to pull. */
  private pull: Start | null = null;
  /** Where the arrow keys are: their first corner and their last. */
  private walk: { readonly start: Start; readonly end: GridSpot } | null = null;
  /** The lines and columns that are pointed at just now. */
  private at: Block | null = null;

  constructor(
    private readonly host: GridHost,
    private readonly showing: Showing,
    /** Chooses what was clicked, after all. */
    private readonly choose: (line: number, column: number) => void,
    private readonly redraw: () => void,
  ) {}

  down(event: MouseEvent, { row, col }: Spot): void {
    const writing = event.button === 0 ? this.host.writing() : null;
    if (!writing) return;
    // The formula keeps the focus.
    event.preventDefault();
    event.stopImmediatePropagation();
    const { shown, columns } = this.showing;
    const column = columns[col ?? -1];
    if (writing === 'whole') {
      void this.host.takeWritten().then((taken) => {
        if (taken) this.choose(row ?? -1, col ?? -1);
      });
      return;
    }
    if (!column) return;
    if ((row ?? -1) < 0) {
      this.host.point({ is: 'column', column });
      return;
    }
    this.walk = null;
    this.pull = { line: row ?? 0, column: col ?? 0, shown, columns };
    // Before the library, which is told to leave this event alone and tells nobody else.
    window.addEventListener('mouseup', () => this.rest(), { once: true, capture: true });
    this.point(this.pull, this.pull);
  }

  over(event: MouseEvent, { row, col }: Spot): void {
    if (!this.pull) return;
    event.stopImmediatePropagation();
    if ((row ?? -1) >= 0 && this.pull.columns[col ?? -1])
      this.point(this.pull, { line: row ?? 0, column: col ?? 0 });
  }

  up(event: MouseEvent): void {
    if (this.pull) event.stopImmediatePropagation();
  }

  /**
   * An arrow key: points at the next cell from the one pointed at last, at first from the one given; with `extend` it pulls
   * on from there. Answers what is pointed at, null where there is nothing.
   */
  arrow(from: GridSpot, down: number, across: number, extend: boolean): GridSpot | null {
    const { shown, columns } = this.showing;
    const { line, column } = this.walk?.end ?? from;
    const end = { line: line + down, column: column + across };
    if (!columns[end.column] || end.line < 0 || end.line >= shown.lines.count) return null;
    // Lines of summaries and the blank one have no cells that a formula could name.
    if (shown.lines.at(end.line).is !== 'row') return null;
    const start = extend && this.walk ? this.walk.start : { ...end, shown, columns };
    this.walk = { start, end };
    this.point(start, end);
    return end;
  }

  /** What was pointed at stands in the formula now: nothing is pointed at any more. */
  rest(): void {
    if (!this.pull && !this.walk) return;
    this.pull = null;
    this.walk = null;
    this.at = null;
    this.redraw();
  }

  /** True for a cell that is being pointed at. */
  covers(line: number, column: number): boolean {
    const { at } = this;
    return at !== null && line >= at.top && line <= at.bottom && column >= at.left && column <= at.right;
  }

  private point(start: Start, end: GridSpot): void {
    const { shown, columns } = start;
    const at = {
      top: Math.min(start.line, end.line),
      bottom: Math.max(start.line, end.line),
      left: Math.min(start.column, end.column),
      right: Math.max(start.column, end.column),
    };
    this.at = at;
    const [from, to] = [columns[at.left]!, columns[at.right]!];
    const [a, b] = [shown.lines.at(at.top), shown.lines.at(at.bottom)];
    if (a.is !== 'row' || b.is !== 'row') this.host.point({ is: 'column', column: from });
    else {
      const [fromRow, toRow] = [Math.min(a.row, b.row), Math.max(a.row, b.row)];
      this.host.point({ is: 'cells', from, to, fromRow, toRow });
    }
    this.redraw();
  }
}
