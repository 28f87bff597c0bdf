/** Places the rows of a file in the columns that were chosen. */
import { limits } from '../../book/file-frame.ts';
import type { HeldRow } from '../api.ts';
import { bare, ownText } from '../cells/index.ts';
import { type Inspected, type Reshaper, reshaper } from '../detect/index.ts';
import type { Batch } from '../read/index.ts';
import { IntakeRefusal, type Note, note } from '../sentences/index.ts';
import type { Match } from './map.ts';
import { type Placed, type PlacingOptions, placedBy } from './placed.ts';

interface Waiting {
  readonly batch: Batch;
  readonly rows: readonly number[];
}

/** Takes rows from the parser, sorts out those that cannot be placed, and fills the columns with the others. */
export class Placing {
  readonly placed: readonly Placed[];
  readonly heldRows: HeldRow[] = [];
  readonly apart: { line: number; raw: string; as: 'preamble' | 'footer' }[] = [];
  /** Line on which each placed row begins. */
  lines: Uint32Array;
  rows = 0;
  blank = 0;
  /** Cells of the lines at the end that were set apart. */
  readonly footerCells: (readonly string[])[] = [];
  repeated = 0;
  preamble = 0;
  headings = 0;
  footer = 0;
  shortPlaced = 0;
  /** Lines of the file that were read. */
  read = 0;
  rowLines = 0;
  private readonly room: number;
  private readonly sheet: string;
  private record = 0;
  private readonly inspected: Inspected;
  private waiting: Waiting[] = [];
  private readonly shaper: Reshaper | null;
  private readonly readAs: readonly { readonly at: number; readonly texts: ReadonlyMap<string, string> }[];
  /** Records of the file that were placed or reshaped. */
  sourceRows = 0;

  constructor(inspected: Inspected, matches: readonly Match[], options: PlacingOptions) {
    this.inspected = inspected;
    this.room = options.room;
    this.sheet = options.sheet;
    this.lines = new Uint32Array(options.expected);
    this.placed = matches.map((match) => placedBy(match, options));
    this.readAs = matches.flatMap(({ how, source }) =>
      how?.readAs ? [{ at: source.index, texts: new Map(Object.entries(how.readAs)) }] : [],
    );
    const { shape, layout, findings } = inspected;
    this.shaper = shape ? reshaper(shape, layout.headings, findings.name) : null;
  }

  /** Takes the next rows. As many as the footer has wait until it is known that they are none. */
  take(batch: Batch): void {
    const keep = this.inspected.findings.footer.value;
    const all = batch.rows.length;
    let free = this.waiting.reduce((n, w) => n + w.rows.length, 0) + all - keep;
    const still: Waiting[] = [];
    for (const { batch: earlier, rows } of this.waiting) {
      const go = Math.max(0, Math.min(free, rows.length));
      free -= go;
      this.takeRows(earlier, rows.slice(0, go));
      if (go < rows.length) still.push({ batch: earlier, rows: rows.slice(go) });
    }
    const go = Math.max(0, Math.min(free, all));
    const indexes = Array.from({ length: all }, (_, i) => i);
    this.takeRows(batch, go === all ? indexes : indexes.slice(0, go));
    if (go < all) still.push({ batch, rows: indexes.slice(go) });
    this.waiting = still;
  }

  /** The file has ended: what still waits is the footer. */
  end(): void {
    for (const { batch, rows } of this.waiting)
      for (const row of rows) {
        const lines = this.count(batch, row);
        if (isBlankRow(batch.rows[row]!)) this.blank += lines;
        else {
          this.footer += lines;
          this.footerCells.push(batch.rows[row]!);
          this.apart.push({ line: batch.lineOf(row), raw: ownText(batch.rawOf(row)), as: 'footer' });
        }
      }
    this.waiting = [];
    if (!this.shaper) return;
    this.shaper.end();
    this.takeShaped();
    this.heldRows.push(...this.shaper.held);
  }

  private takeShaped(): void {
    const { rows, lines } = this.shaper!.drain();
    for (const line of lines) this.noteLine(line);
    this.fill(rows);
  }

  private fill(rows: readonly (readonly string[])[]): void {
    const read = this.readAs.length > 0 ? rows.map((row) => this.withReadAs(row)) : rows;
    if (rows.length > 0) for (const { match, builder } of this.placed) builder.put(read, match.source.index);
  }

  /** The row with the texts that were decided to mean others. */
  private withReadAs(row: readonly string[]): readonly string[] {
    let out: string[] | null = null;
    for (const { at, texts } of this.readAs) {
      const text = texts.get(bare(row[at] ?? '').trim());
      if (text === undefined) continue;
      out ??= [...row];
      out[at] = text;
    }
    return out ?? row;
  }

  private count(batch: Batch, row: number): number {
    const lines = batch.lineOf(row + 1) - batch.lineOf(row);
    this.read += lines;
    return lines;
  }

  private takeRows(batch: Batch, indexes: readonly number[]): void {
    const { layout } = this.inspected;
    const good: (readonly string[])[] = [];
    for (const row of indexes) {
      const cells = batch.rows[row]!;
      const record = this.record++;
      const lines = this.count(batch, row);
      if (record < layout.skip) {
        if (record < layout.preamble.value) {
          this.preamble += lines;
          this.apart.push({ line: batch.lineOf(row), raw: ownText(batch.rawOf(row)), as: 'preamble' });
        } else this.headings += lines;
      } else if (isBlankRow(cells)) this.blank += lines;
      else {
        const why = this.whyNot(cells, batch.damaged.has(row));
        if (why === 'headings') this.repeated += lines;
        else {
          this.rowLines += lines;
          if (why === null) {
            this.sourceRows++;
            if (this.shaper) this.shaper.put(cells, batch.lineOf(row));
            else {
              this.noteLine(batch.lineOf(row));
              good.push(cells);
            }
          } else this.heldRows.push({ line: batch.lineOf(row), raw: ownText(batch.rawOf(row)), reason: why });
        }
      }
    }
    if (this.shaper) this.takeShaped();
    else this.fill(good);
  }

  private noteLine(line: number): void {
    if (this.rows >= this.room)
      throw new IntakeRefusal('too-many-rows', {
        name: this.inspected.findings.name,
        sheet: this.sheet,
        most: limits.rows,
      });
    if (this.rows === this.lines.length) {
      const lines = new Uint32Array(Math.max(16, Math.ceil(this.rows * 1.5)));
      lines.set(this.lines);
      this.lines = lines;
    }
    this.lines[this.rows++] = line;
  }

  /** Why a row cannot be placed; null when it can. */
  private whyNot(cells: readonly string[], damaged: boolean): Note | 'headings' | null {
    const { layout, findings } = this.inspected;
    const width = layout.headings.length;
    if (damaged) return note('open-quote');
    for (const cell of cells)
      if (cell.length > limits.text) return note('cell-too-long', { length: cell.length, most: limits.text });
    if (cells.length !== width) {
      if (cells.length > width) {
        for (let i = width; i < cells.length; i++)
          if (cells[i]!.trim() !== '') return note('too-many-cells', { cells: cells.length, columns: width });
      } else if (findings.shortRows.value === 'hold')
        return note('too-few-cells', { cells: cells.length, columns: width });
      else this.shortPlaced++;
    }
    return layout.headingLines.value > 0 && isHeadingAgain(cells, layout.headings) ? 'headings' : null;
  }
}

function isBlankRow(cells: readonly string[]): boolean {
  for (const cell of cells) if (cell !== '' && cell.trim() !== '') return false;
  return true;
}

function isHeadingAgain(cells: readonly string[], headings: readonly string[]): boolean {
  if (cells[0]?.trim() !== headings[0]) return false;
  let filled = 0;
  for (let i = 0; i < headings.length; i++) {
    if ((cells[i] ?? '').trim() !== headings[i]) return false;
    if (headings[i] !== '') filled++;
  }
  return filled > 0;
}
