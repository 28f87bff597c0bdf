import type { Column } from '../book/model.ts';
import { serialFromIso } from '../units/date.ts';
import { type DisplayUnit, displayUnitOf, unitFromWord } from '../units/unit.ts';
import type { ColumnFinding, HeldRow, PlausibleColumn } from './api.ts';
import type { Inspected } from './inspect.ts';
import { type Lane, ownText } from './lane.ts';
import { DateLane, NumberLane, TextLane, YesNoLane } from './lanes.ts';
import type { Match } from './map.ts';
import type { Batch } from './parse.ts';
import type { Recipe } from './recipe.ts';
import { type Reshaper, reshaper } from './reshape.ts';
import { IntakeRefusal, type Note, note, sentence } from './sentences.ts';
import { dateWords, missingWords, yesNoPairs } from './words.ts';

/** One column of the file on its way into one of the sheet. */
export interface Placed {
  readonly match: Match;
  readonly lane: Lane;
  /** What the cells are written in. */
  readonly unit: DisplayUnit | undefined;
  readonly factor: number;
  readonly bounds: PlausibleColumn | null;
}

export interface PlacingOptions {
  readonly recipe: Recipe | null;
  /** Now, ISO 8601. */
  readonly now: string;
  readonly boundsOf: (column: Column) => PlausibleColumn | null;
  /** Rows to expect. */
  readonly expected: number;
}

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
  private record = 0;
  private readonly inspected: Inspected;
  private waiting: Waiting[] = [];
  private readonly shaper: Reshaper | null;
  /** Records of the file that were placed or reshaped. */
  sourceRows = 0;

  constructor(inspected: Inspected, matches: readonly Match[], options: PlacingOptions) {
    this.inspected = inspected;
    this.lines = new Uint32Array(options.expected);
    this.placed = matches.map((match) => placedBy(match, options));
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
    if (rows.length > 0) for (const { match, lane } of this.placed) lane.put(rows, match.source.index);
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

/** Makes the lane for a match: what the recipe says goes before what was found. */
function placedBy(match: Match, options: PlacingOptions): Placed {
  const { source, column, how } = match;
  const { recipe, expected } = options;
  const missing = how?.missing ?? recipe?.missing ?? [...missingWords];
  const unit = column.kind === 'number' ? unitFor(match) : undefined;
  const factor = how?.factor ?? 1;
  const bounds = column.kind === 'number' ? options.boundsOf(column) : null;
  return { match, unit, factor, bounds, lane: laneFor() };

  function laneFor(): Lane {
    if (column.kind === 'number')
      return new NumberLane(
        {
          missing,
          style: {
            decimal: how?.decimal ?? recipe?.read?.decimal ?? source.decimal.value,
            thousands: source.thousands,
          },
          dimension: column.dimension,
          unit,
          factor,
          clock: how?.clock ?? source.clock?.value ?? 'h:mm',
          ownUnits: source.ownUnits,
          perCent: source.perCent,
          bounds: bounds ? { min: bounds.min ?? -Infinity, max: bounds.max ?? Infinity } : null,
        },
        expected,
      );
    if (column.kind === 'date') {
      const said = how?.dateOrder ?? recipe?.read?.dateOrder;
      return new DateLane(
        {
          missing,
          order: said ?? source.dateOrder?.value ?? 'dmy',
          open: said === undefined && source.dateOrder?.certainty !== 'sure',
          compact: source.kind.value === 'date' || dateWords.test(source.label.toLowerCase()),
          latest: Math.floor(serialFromIso(options.now) ?? Infinity),
        },
        expected,
      );
    }
    if (column.kind === 'yes-no') {
      const [yes, no] = yesNoPairs[0]!;
      return new YesNoLane(missing, how?.yes ?? [...yes, '1'], how?.no ?? [...no, '0'], expected);
    }
    return new TextLane(column.kind === 'choice' ? (column.choices ?? null) : null, expected);
  }
}

/** The unit of cells: the recipe's, the file's, or the one the column is shown in. */
function unitFor({ source, column, how }: Match): DisplayUnit | undefined {
  if (!column.dimension && !how?.unit) return undefined;
  const word = how?.unit ?? source.unit.value;
  if (word === null || word === undefined) return displayUnitOf(column);
  const unit = unitFromWord(word);
  if (!unit)
    throw new IntakeRefusal('unknown-unit', {
      column: column.name,
      unit: word,
      known: 'cm, mm, m, in, ft, kg, lb, …',
    });
  if (unit.dimension !== column.dimension) {
    if (how?.unit === undefined) return displayUnitOf(column);
    throw new IntakeRefusal('unit-of-other-dimension', {
      heading: source.heading,
      unit: unit.unit,
      found: unit.dimension,
      column: column.name,
      dimension: column.dimension ?? 'plain numbers',
    });
  }
  return unit;
}

/** What to know about a column of the file after its cells were read. */
export function columnNotes({ match, lane, bounds }: Placed, lineOf: (row: number) => number): Note[] {
  const heading = match.source.heading || match.source.label;
  const notes: Note[] = [];
  if (lane.firstHeld && lane.held.size > 0) {
    const { row, text, why } = lane.firstHeld;
    notes.push(
      note('cells-held', {
        heading,
        count: lane.held.size,
        example: text,
        line: lineOf(row),
        why: sentence(why),
      }),
    );
  }
  const words = [...lane.missingSeen.keys()];
  if (words.length > 0) {
    const count = [...lane.missingSeen.values()].reduce((a, b) => a + b, 0);
    notes.push(
      note('missing-words', {
        heading,
        count,
        words: words
          .slice(0, 5)
          .map((w) => `"${w}"`)
          .join(', '),
      }),
    );
  }
  if (lane instanceof NumberLane)
    notes.push(...numberNotes(lane, match.source, bounds, match.column, lineOf));
  if (lane instanceof DateLane && lane.firstFuture)
    notes.push(
      note('future-dates', {
        heading,
        count: lane.future,
        value: lane.firstFuture.text,
        line: lineOf(lane.firstFuture.row),
      }),
    );
  if (lane instanceof TextLane && lane.firstApostrophe)
    notes.push(note('apostrophes', { heading, count: lane.apostrophes, example: lane.firstApostrophe.text }));
  if (lane instanceof TextLane && lane.firstFormulaLike)
    notes.push(
      note('formula-like', { heading, count: lane.formulaLike, example: lane.firstFormulaLike.text }),
    );
  return notes;
}

function numberNotes(
  lane: NumberLane,
  source: ColumnFinding,
  bounds: PlausibleColumn | null,
  column: Column,
  lineOf: (row: number) => number,
): Note[] {
  const heading = source.heading || source.label;
  const notes: Note[] = [];
  if (lane.firstOwnUnit)
    notes.push(note('own-units', { heading, count: lane.ownUnits, example: lane.firstOwnUnit.text }));
  if (lane.firstPerCent)
    notes.push(
      note('per-cent', {
        heading,
        example: lane.firstPerCent.text,
        value: lane.firstPerCent.text.replace(/\s*%$/, ''),
      }),
    );
  if (bounds && lane.firstOutside)
    notes.push(...outsideNotes(lane, bounds, heading, column, lineOf(lane.firstOutside.row)));
  return notes;
}

/** Factors by which people are wrong: metres, millimetres and inches for centimetres, tenths, pounds for kilograms. */
const slips: readonly (readonly [string, number])[] = [
  ['metres', 100],
  ['millimetres', 0.1],
  ['inches', 2.54],
  ['tenths', 0.1],
  ['pounds', 0.45359237],
  ['grams', 0.001],
];

function outsideNotes(
  lane: NumberLane,
  bounds: PlausibleColumn,
  heading: string,
  column: Column,
  line: number,
): Note[] {
  const unit = displayUnitOf(column)?.unit ?? '';
  const min = bounds.min ?? -Infinity;
  const max = bounds.max ?? Infinity;
  const range = `${bounds.min ?? ''} to ${bounds.max ?? ''}`;
  const because = bounds.because ?? '';
  const details = { heading, bounds: range, unit, because };
  const notes: Note[] = [
    note('out-of-bounds', { ...details, count: lane.outside, value: lane.firstOutside!.text, line }),
  ];
  const sorted = [...lane.sample].sort((a, b) => a - b);
  const middle = sorted[Math.floor(sorted.length / 2)];
  if (middle === undefined || (middle >= min && middle <= max)) return notes;
  const kind =
    column.dimension === 'mass'
      ? ['tenths', 'pounds', 'grams']
      : column.dimension === 'length'
        ? ['metres', 'millimetres', 'inches']
        : [];
  const slip = slips.find(([word, by]) => kind.includes(word) && middle * by >= min && middle * by <= max);
  if (slip)
    notes.push(
      note('factor-proposed', {
        ...details,
        value: Number(middle.toPrecision(4)),
        proposed: slip[0],
        wouldBe: Number((middle * slip[1]).toPrecision(4)),
      }),
    );
  return notes;
}
