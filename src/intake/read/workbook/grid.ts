/** A table of a workbook file while its cells arrive. */
import { IntakeRefusal } from '../../sentences/index.ts';

const MOST_COLUMNS = 4000;
const MOST_CELLS = 30_000_000;
/** Blank rows between filled ones that are kept, so that a row keeps its number. */
const MOST_GAP = 1000;

/** The cells of one table of a workbook, as texts. */
export class Grid {
  private readonly rows: string[][] = [];
  private width = 0;
  private readonly name: string;

  constructor(name: string) {
    this.name = name;
  }

  /** Adds a row at its number, from 0; rows come in order. */
  add(at: number, row: string[]): void {
    while (row.length > 0 && row.at(-1) === '') row.pop();
    if (row.length === 0) return;
    if (row.length > MOST_COLUMNS)
      throw new IntakeRefusal('workbook-wide', { name: this.name, most: MOST_COLUMNS });
    if (at - this.rows.length <= MOST_GAP) while (this.rows.length < at) this.rows.push([]);
    this.rows.push(row);
    this.width = Math.max(this.width, row.length);
    // Every row comes out as wide as the widest.
    if (this.width * this.rows.length > MOST_CELLS) this.refuse();
  }

  /** @throws IntakeRefusal */
  refuse(): never {
    throw new IntakeRefusal('workbook-cells', { name: this.name, most: MOST_CELLS });
  }

  get height(): number {
    return this.rows.length;
  }

  /** The table as CSV (RFC 4180), every row as wide as the widest. */
  *csv(): Generator<string> {
    const quote = (cell: string): string =>
      /[",\r\n]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
    for (const row of this.rows) {
      const cells = row.map(quote);
      while (cells.length < this.width) cells.push('');
      yield `${cells.join(',')}\n`;
    }
  }
}
