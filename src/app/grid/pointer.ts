import type { ColumnOutline } from '../../session/api.ts';
import type { GridHost, Shown } from './host.ts';

interface Spot {
  readonly row: number | null;
  readonly col: number | null;
}

/**
 * Clicks and pulls over the grid while a formula is being written: they put names into it where a name can stand, each
 * place pulled over taking the place of the one before. Where none can, the formula is taken first and then the click
 * chooses; what is refused stays in hand. Either way nothing that was written is lost.
 */
export class Pointer {
  private start: { readonly line: number; readonly column: number } | null = null;
  private shown: Shown | null = null;
  private columns: readonly ColumnOutline[] = [];
  /** The lines and columns that are pointed at just now. */
  private at: Block | null = null;

  constructor(
    private readonly host: GridHost,
    /** Chooses what was clicked, after all. */
    private readonly choose: (line: number, column: number) => void,
    private readonly redraw: () => void,
  ) {}

  down(event: MouseEvent, { row, col }: Spot, shown: Shown, columns: readonly ColumnOutline[]): void {
    const writing = event.button === 0 ? this.host.writing() : null;
    if (!writing) return;
    // The formula keeps the focus.
    event.preventDefault();
    event.stopImmediatePropagation();
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
    this.start = { line: row ?? 0, column: col ?? 0 };
    this.shown = shown;
    this.columns = columns;
    // Before the library, which is told to leave this event alone and tells nobody else.
    window.addEventListener('mouseup', () => this.finish(), { once: true, capture: true });
    this.point(this.start.line, this.start.column);
  }

  over(event: MouseEvent, { row, col }: Spot): void {
    if (!this.start) return;
    event.stopImmediatePropagation();
    if ((row ?? -1) >= 0 && this.columns[col ?? -1]) this.point(row ?? 0, col ?? 0);
  }

  up(event: MouseEvent): void {
    if (this.start) event.stopImmediatePropagation();
  }

  /** True for a cell that is being pointed at. */
  covers(line: number, column: number): boolean {
    const { at } = this;
    return at !== null && line >= at.top && line <= at.bottom && column >= at.left && column <= at.right;
  }

  private point(line: number, column: number): void {
    const { start, shown, columns } = this;
    if (!start || !shown) return;
    const at = {
      top: Math.min(start.line, line),
      bottom: Math.max(start.line, line),
      left: Math.min(start.column, column),
      right: Math.max(start.column, column),
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

  private finish(): void {
    this.start = null;
    this.at = null;
    this.redraw();
  }
}

interface Block {
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}
