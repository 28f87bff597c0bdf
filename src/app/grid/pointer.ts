import type { ColumnOutline } from '../../session/api.ts';
import type { GridHost, Shown } from './host.ts';

interface Spot {
  readonly row: number | null;
  readonly col: number | null;
}

/**
 * Pointing while a formula is being written: clicks and pulls over the grid put names into the formula instead of
 * choosing cells.
 */
export class Pointer {
  private start: { readonly line: number; readonly column: number } | null = null;
  private end: { readonly line: number; readonly column: number } | null = null;
  private shown: Shown | null = null;
  private columns: readonly ColumnOutline[] = [];
  private readonly host: GridHost;

  constructor(host: GridHost) {
    this.host = host;
  }

  down(event: MouseEvent, { row, col }: Spot, shown: Shown, columns: readonly ColumnOutline[]): void {
    if (event.button !== 0 || !this.host.pointing()) return;
    // The formula keeps the focus.
    event.preventDefault();
    event.stopImmediatePropagation();
    const column = columns[col ?? -1];
    if (!column) return;
    if ((row ?? -1) < 0) {
      this.host.point({ is: 'column', column });
      return;
    }
    this.start = { line: row ?? 0, column: col ?? 0 };
    this.end = this.start;
    this.shown = shown;
    this.columns = columns;
    window.addEventListener('mouseup', () => this.finish(), { once: true });
  }

  over(event: MouseEvent, { row, col }: Spot, _shown: Shown, columns: readonly ColumnOutline[]): void {
    if (!this.start) return;
    event.stopImmediatePropagation();
    if ((row ?? -1) >= 0 && columns[col ?? -1]) this.end = { line: row ?? 0, column: col ?? 0 };
  }

  up(event: MouseEvent): void {
    if (this.start) event.stopImmediatePropagation();
  }

  private finish(): void {
    const { start, end, shown, columns } = this;
    this.start = null;
    if (!start || !end || !shown) return;
    const [a, b] = [shown.lines.at(start.line), shown.lines.at(end.line)];
    const from = columns[Math.min(start.column, end.column)];
    const to = columns[Math.max(start.column, end.column)];
    if (!from || !to) return;
    if (a.is !== 'row' || b.is !== 'row') this.host.point({ is: 'column', column: from });
    else
      this.host.point({
        is: 'cells',
        from,
        to,
        fromRow: Math.min(a.row, b.row),
        toRow: Math.max(a.row, b.row),
      });
  }
}
