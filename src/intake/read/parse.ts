/** From text to rows of cells. */
import Papa from 'papaparse';
import type { Delimiter, Progress, Quote } from '../api.ts';
import { withOneLineEnd } from './line-ends.ts';

export interface Dialect {
  readonly delimiter: Delimiter;
  readonly quote: Quote;
}

/** What rows are split at, once every line ends the same way. */
const NEWLINE = '\n';

/** Rows that were read together, and where they stand in the file. */
export interface Batch {
  readonly rows: readonly (readonly string[])[];
  /** Line of the first row, from 1. */
  readonly line: number;
  /** Rows that are damaged: cells could not be told apart, the row holds the raw line as its one cell. */
  readonly damaged: ReadonlySet<number>;
  /** Line on which a row begins. */
  lineOf(row: number): number;
  /** A row as it stands in the file. */
  rawOf(row: number): string;
}

interface ParsedPiece {
  readonly data: string[][];
  readonly errors: readonly { readonly row?: number; readonly code: string }[];
  readonly meta: { readonly cursor: number };
}

/** A cell in quotes longer than this, or over more lines, is a quote that was never closed. */
const LONGEST_RECORD = 256 * 1024;
const MOST_LINES = 200;
/** After so many damaged records in one piece its lines are read one by one, so that hostile files cost no more. */
const MOST_DAMAGE = 20;

/**
 * Reads rows from pieces of text, losing none: a quote that is opened and not closed properly costs its own line only,
 * which comes out as damaged. Every line of the file is in exactly one row.
 */
export function* parseRows(pieces: Iterable<string>, dialect: Dialect): Generator<Batch, void> {
  let rest = '';
  let line = 1;
  let held: string | null = null;
  for (const piece of withOneLineEnd(pieces)) {
    // A piece without a line end completes no row.
    if (held !== null && !held.includes(NEWLINE)) rest += held;
    else if (held !== null) {
      const { batch, left } = readPiece(rest + held, line, dialect, false);
      rest = left;
      if (batch.rows.length > 0) yield batch;
      line = batch.lineOf(batch.rows.length);
    }
    held = piece;
  }
  const text = rest + (held ?? '');
  if (text === '') return;
  const { batch } = readPiece(text, line, dialect, true);
  if (batch.rows.length > 0) yield batch;
}

function readPiece(
  text: string,
  line: number,
  dialect: Dialect,
  last: boolean,
): { batch: Batch; left: string } {
  const reader = new PieceReader(dialect);
  const left = reader.read(text, last);
  return { batch: reader.batch(text, line), left };
}

class PieceReader {
  private readonly rows: string[][] = [];
  private readonly damaged = new Set<number>();
  private readonly dialect: Dialect;
  /** True when a cell with a line break was read, so rows and lines differ. */
  private uneven = false;

  constructor(dialect: Dialect) {
    this.dialect = dialect;
  }

  /** Reads what is complete and gives back the rest. */
  read(text: string, last: boolean): string {
    const { quote } = this.dialect;
    let from = 0;
    for (;;) {
      const part = from === 0 ? text : text.slice(from);
      const parsed = this.parse(part, last);
      const bad = quote === '' || !part.includes(quote) ? -1 : this.firstBad(parsed, last);
      const good = bad < 0 ? parsed.data.length : bad;
      for (let i = 0; i < good; i++) this.rows.push(parsed.data[i]!);
      if (bad < 0) {
        const left = last ? '' : part.slice(parsed.meta.cursor);
        if (last && part.endsWith(NEWLINE)) this.dropLastBlank();
        if (!this.tooLong(left)) return left;
      }
      // The record that begins here is damaged: its first line comes out alone.
      from += this.offsetOf(part, parsed, good, bad < 0 ? parsed.meta.cursor : -1);
      const end = text.indexOf(NEWLINE, from);
      this.damaged.add(this.rows.length);
      this.rows.push([end < 0 ? text.slice(from) : text.slice(from, end)]);
      from = end < 0 ? text.length : end + 1;
      if (from >= text.length) return '';
      if (this.damaged.size > MOST_DAMAGE) return this.readLines(text, from, last);
    }
  }

  /** Line by line: what is whole within its line is a row, what is not is damaged. */
  private readLines(text: string, start: number, last: boolean): string {
    let from = start;
    while (from < text.length) {
      const end = text.indexOf(NEWLINE, from);
      if (end < 0 && !last) return text.slice(from);
      const line = text.slice(from, end < 0 ? text.length : end);
      const parsed = this.parse(line, true);
      if (parsed.errors.length > 0 || parsed.data.length > 1) {
        this.damaged.add(this.rows.length);
        this.rows.push([line]);
      } else this.rows.push(parsed.data[0] ?? ['']);
      from = end < 0 ? text.length : end + 1;
    }
    return '';
  }

  private parse(text: string, last: boolean): ParsedPiece {
    const { delimiter, quote } = this.dialect;
    const parser = new Papa.Parser({
      delimiter,
      newline: NEWLINE,
      quoteChar: quote === '' ? '"' : quote,
      escapeChar: quote === '' ? '"' : quote,
      ...(quote === '' ? { fastMode: true } : {}),
    });
    return parser.parse(text, 0, !last) as ParsedPiece;
  }

  /** The first record whose quotes do not add up, or -1. */
  private firstBad(parsed: ParsedPiece, last: boolean): number {
    const { delimiter } = this.dialect;
    let bad = -1;
    for (const error of parsed.errors) {
      const row = error.row ?? 0;
      if (row >= parsed.data.length && !last) continue;
      const record = parsed.data[Math.min(row, parsed.data.length - 1)] ?? [];
      // A quote inside a quoted cell of one line is read as it stands; over lines it has swallowed others.
      const harmless = error.code === 'InvalidQuotes' && !record.some((cell) => cell.includes(NEWLINE));
      if (!harmless && (bad < 0 || row < bad)) bad = row;
    }
    const upTo = bad < 0 ? parsed.data.length : bad;
    for (let i = 0; i < upTo; i++) {
      const record = parsed.data[i]!;
      for (const cell of record) {
        if (!cell.includes(NEWLINE)) continue;
        this.uneven = true;
        if (swallowed(cell, record.length, delimiter)) return i;
      }
    }
    return bad;
  }

  /** A record over several lines that goes on and on. */
  private tooLong(left: string): boolean {
    if (left.length > LONGEST_RECORD) return left.includes(NEWLINE);
    if (left.length < MOST_LINES) return false;
    let lines = 0;
    for (let at = left.indexOf(NEWLINE); at >= 0; at = left.indexOf(NEWLINE, at + 1))
      if (++lines > MOST_LINES) return true;
    return false;
  }

  /** Where record `row` begins in the part: past the lines of those before it. */
  private offsetOf(part: string, parsed: ParsedPiece, row: number, known: number): number {
    if (known >= 0) return known;
    let lines = 0;
    for (let i = 0; i < row; i++) lines += linesOf(parsed.data[i]!);
    let at = 0;
    for (let i = 0; i < lines; i++) at = part.indexOf(NEWLINE, at) + 1;
    return at;
  }

  /** The line end of the last row is no further row. */
  private dropLastBlank(): void {
    const row = this.rows.at(-1);
    if (row && row.length === 1 && row[0] === '') this.rows.pop();
  }

  batch(text: string, line: number): Batch {
    const { rows, damaged } = this;
    let starts: Float64Array | null = null;
    const beginnings = (): Float64Array => {
      if (starts) return starts;
      starts = new Float64Array(rows.length + 1);
      for (let i = 0; i < rows.length; i++)
        starts[i + 1] = starts[i]! + (damaged.has(i) ? 1 : linesOf(rows[i]!));
      return starts;
    };
    const lineOf = (row: number): number => line + (this.uneven ? beginnings()[row]! : row);
    let offsets: number[] | null = null;
    const rawOf = (row: number): string => {
      if (!offsets) {
        offsets = [0];
        for (let at = text.indexOf(NEWLINE); at >= 0; at = text.indexOf(NEWLINE, at + 1))
          offsets.push(at + 1);
        offsets.push(text.length + 1);
      }
      const first = lineOf(row) - line;
      const next = lineOf(row + 1) - line;
      return text.slice(offsets[first], offsets[Math.min(next, offsets.length - 1)]! - 1);
    };
    return { rows, line, damaged, lineOf, rawOf };
  }
}

/** A cell over several lines of which one has as many marks as a whole row: a quote went astray and took rows with it. */
function swallowed(cell: string, columns: number, delimiter: string): boolean {
  if (columns < 2) return false;
  for (const line of cell.split(NEWLINE))
    if (line.split(delimiter).length >= Math.max(2, columns)) return true;
  return false;
}

function linesOf(row: readonly string[]): number {
  let lines = 1;
  for (const cell of row)
    for (let at = cell.indexOf(NEWLINE); at >= 0; at = cell.indexOf(NEWLINE, at + 1)) lines++;
  return lines;
}

const PIECE = 1 << 17;

function* piecesOf(text: string): Generator<string> {
  for (let from = 0; from < text.length; from += PIECE) yield text.slice(from, from + PIECE);
}

/** All rows of a text; for the first and last lines of a file. */
export function* parsingText(text: string, dialect: Dialect): Generator<Progress, (readonly string[])[]> {
  const rows: (readonly string[])[] = [];
  let done = 0;
  for (const batch of parseRows(piecesOf(text), dialect)) {
    for (const row of batch.rows) rows.push(row);
    done += PIECE;
    yield { done: Math.min(done, text.length), total: text.length, about: 'looking at the file' };
  }
  return rows;
}

/** The same at once. */
export function parseText(text: string, dialect: Dialect): (readonly string[])[] {
  const rows: (readonly string[])[] = [];
  for (const batch of parseRows(piecesOf(text), dialect)) for (const row of batch.rows) rows.push(row);
  return rows;
}
