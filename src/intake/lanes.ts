import { CellKind } from '../book/cells.ts';
import { isoFromSerial } from '../units/date.ts';
import { type Dimension, dimensions } from '../units/dimension.ts';
import { type DisplayUnit, unitFromWord } from '../units/unit.ts';
import type { Clock, DateOrder } from './api.ts';
import { bare, type First, Lane, ownText } from './lane.ts';
import { readUnitCell } from './read-cell.ts';
import { readDate, readDateForms, swapDayAndMonth } from './read-date.ts';
import { readDuration } from './read-duration.ts';
import { type NumberStyle, readNumber } from './read-number.ts';
import { note } from './sentences.ts';

/** A factor as a fraction of whole numbers where it is one, so that tenths are divided and rounded once. */
export interface Scale {
  readonly per: number;
  readonly of: number;
}

/** A unit and a recipe's factor together. */
export function scaleOf(unit: DisplayUnit | undefined, factor: number): Scale {
  const inverse = Math.round(1 / factor);
  const whole = factor < 1 && Math.abs(1 / factor - inverse) < 1e-9 * inverse;
  const per = (unit?.per ?? 1) * (whole ? 1 : factor);
  const of = (unit?.of ?? 1) * (whole ? inverse : 1);
  return { per, of };
}

export interface NumberLaneOptions {
  readonly missing: readonly string[];
  readonly style: NumberStyle;
  readonly dimension: Dimension | undefined;
  /** Unit of cells without one of their own. */
  readonly unit: DisplayUnit | undefined;
  readonly factor: number;
  readonly clock: Clock;
  /** Cells with a unit behind the number are the habit here; else each is held. */
  readonly ownUnits: boolean;
  readonly perCent: boolean;
  readonly bounds: { readonly min: number; readonly max: number } | null;
}

/** Numbers: converted to base units; what reads otherwise is held. */
export class NumberLane extends Lane {
  ownUnits = 0;
  firstOwnUnit: First | null = null;
  perCent = 0;
  firstPerCent: First | null = null;
  outside = 0;
  firstOutside: First | null = null;
  /** Values as they were read, in base units, for the middle one. */
  readonly sample: number[] = [];
  /** Sum of the numbers as they stand in the file. */
  sum = 0;
  private readonly o: NumberLaneOptions;
  private readonly scale: Scale;

  get style(): NumberStyle {
    return this.o.style;
  }

  constructor(options: NumberLaneOptions, expected: number) {
    super(options.missing, expected);
    this.o = options;
    this.scale = scaleOf(options.unit, options.factor);
  }

  put(rows: readonly (readonly string[])[], at: number): void {
    this.reserve(rows.length);
    const { style, bounds } = this.o;
    const { per, of } = this.scale;
    const { kinds, numbers } = this;
    let row = this.length;
    let sum = this.sum;
    for (let i = 0; i < rows.length; i++, row++) {
      const text = rows[i]![at];
      if (text === undefined || text === '') {
        this.blank++;
        continue;
      }
      const raw = readNumber(text, style);
      const value = Number.isNaN(raw) ? this.readOther(text.trim(), text, row) : (raw * per) / of;
      if (Number.isNaN(value)) continue;
      kinds[row] = CellKind.number;
      numbers[row] = value + 0;
      this.filled++;
      sum += raw;
      if (this.sample.length < 2000) this.sample.push(value);
      if (bounds && !(value >= bounds.min && value <= bounds.max)) {
        this.outside++;
        this.firstOutside ??= { row, text: ownText(text) };
      }
    }
    this.sum = sum;
    this.length = row;
  }

  /** A cell that is no plain number: NaN when it was held or is blank. */
  private readOther(text: string, raw: string, row: number): number {
    const { style, dimension } = this.o;
    if (text === '') {
      this.blank++;
      return Number.NaN;
    }
    if (this.isMissing(text)) return Number.NaN;
    if (dimension === 'duration') {
      const minutes = readDuration(text, this.o.clock);
      if (!Number.isNaN(minutes)) return minutes;
    }
    const own = readUnitCell(text);
    if (own?.word === '%' && this.o.perCent) {
      const value = readNumber(own.number, style);
      if (!Number.isNaN(value)) {
        this.perCent++;
        this.firstPerCent ??= { row, text };
        return value * this.o.factor;
      }
    }
    if (own?.unit) {
      const value = own.number === '' ? readFeet(text) : readNumber(own.number, style);
      if (!Number.isNaN(value)) return this.takeOwnUnit(text, raw, row, value, own.unit);
    }
    if (dimension === 'duration' && text.includes(':')) {
      this.hold(row, raw, note('not-a-duration', { text, clock: this.o.clock, example: '1:15' }));
      return Number.NaN;
    }
    const example = style.decimal === ',' ? '44,5' : '44.5';
    const swapped = readNumber(text, { decimal: style.decimal === ',' ? '.' : ',', thousands: '' });
    this.hold(
      row,
      raw,
      Number.isNaN(swapped)
        ? note('not-a-number', { text, example })
        : note('other-mark', { text, mark: style.decimal, write: text.replace(/[.,]/, style.decimal) }),
    );
    return Number.NaN;
  }

  private takeOwnUnit(text: string, raw: string, row: number, value: number, unit: DisplayUnit): number {
    const { dimension } = this.o;
    if (!dimension) {
      this.hold(row, raw, note('unit-without-dimension', { text, unit: unit.unit }));
      return Number.NaN;
    }
    const here = (this.o.unit ?? unitFromWord(dimensions[dimension]))!;
    if (unit.dimension !== dimension) {
      this.hold(row, raw, note('other-unit', { text, unit: unit.unit, dimension, expected: here.unit }));
      return Number.NaN;
    }
    const base = (value * unit.per) / unit.of;
    if (!this.o.ownUnits) {
      const write = Number(((base * here.of) / here.per / this.o.factor).toPrecision(10));
      this.hold(row, raw, note('lone-unit', { text, unit: here.unit, write }));
      return Number.NaN;
    }
    this.ownUnits++;
    this.firstOwnUnit ??= { row, text };
    return base;
  }
}

/** Feet of a text such as 5'10" or 5 ft 10 in. */
function readFeet(text: string): number {
  const [feet, inches] = text.match(/\d+(?:[.,]\d+)?/g) ?? [];
  return (Number(feet) * 12 + Number((inches ?? '0').replace(',', '.'))) / 12;
}

export interface DateLaneOptions {
  readonly missing: readonly string[];
  readonly order: DateOrder;
  /** The order was not proven, so the whole column may still prove another. */
  readonly open: boolean;
  /** 20240131 is a date here. */
  readonly compact: boolean;
  /** Dates after this serial are doubted. */
  readonly latest: number;
}

const MEMORY = 20_000;

/** Dates as serial days. */
export class DateLane extends Lane {
  future = 0;
  firstFuture: First | null = null;
  order: DateOrder;
  /** A date was seen that cannot be read in the other order. */
  private fixed = false;
  private readonly o: DateLaneOptions;
  private readonly seen = new Map<string, number>();

  constructor(options: DateLaneOptions, expected: number) {
    super(options.missing, expected);
    this.o = options;
    this.order = options.order;
  }

  put(rows: readonly (readonly string[])[], at: number): void {
    this.reserve(rows.length);
    const { kinds, numbers, seen } = this;
    const { latest } = this.o;
    let row = this.length;
    for (let i = 0; i < rows.length; i++, row++) {
      const text = rows[i]![at];
      if (text === undefined || text === '') {
        this.blank++;
        continue;
      }
      let serial = seen.get(text);
      if (serial === undefined) {
        serial = readDate(text, this.order, this.o.compact);
        if (this.o.open && !this.fixed) this.fixed = fixesOrder(text, this.order);
        if (seen.size < MEMORY) seen.set(ownText(text), serial);
      }
      if (Number.isNaN(serial)) {
        this.readOther(text, row);
        continue;
      }
      kinds[row] = CellKind.date;
      numbers[row] = serial;
      this.filled++;
      if (serial > latest) {
        this.future++;
        this.firstFuture ??= { row, text: ownText(text) };
      }
    }
    this.length = row;
  }

  private readOther(raw: string, row: number): void {
    const text = raw.trim();
    if (text === '') this.blank++;
    else if (!this.isMissing(text))
      this.hold(row, raw, note('not-a-date', { text, order: this.order, example: '2026-03-31' }));
  }

  /**
   * When the order was open and cells turned up that fit only the other one, while none needs this one, the whole column
   * changes over. Returns true when it did.
   */
  settle(): boolean {
    if (!this.o.open || this.fixed || this.order === 'ymd') return false;
    const other = this.order === 'dmy' ? 'mdy' : 'dmy';
    const mended = [...this.held].filter(([, held]) => !Number.isNaN(readDate(held.held, other)));
    if (mended.length === 0) return false;
    for (let row = 0; row < this.length; row++)
      if (this.kinds[row] === CellKind.date) this.numbers[row] = swapDayAndMonth(this.numbers[row]!);
    for (const [row, held] of mended) {
      this.held.delete(row);
      this.kinds[row] = CellKind.date;
      this.numbers[row] = readDate(held.held, other);
      this.filled++;
    }
    if (this.held.size === 0) this.firstHeld = null;
    this.order = other;
    return true;
  }
}

function fixesOrder(text: string, order: DateOrder): boolean {
  const reading = readDateForms(text);
  if (!reading) return false;
  if (reading.form === 'ymd' || reading.form === 'named') return true;
  return Number.isNaN(order === 'mdy' ? reading.dmy : reading.mdy);
}

export const dayText = (serial: number): string => isoFromSerial(serial) ?? String(serial);

/** Texts as they came; equal ones are kept once. */
export class TextLane extends Lane {
  apostrophes = 0;
  firstApostrophe: First | null = null;
  formulaLike = 0;
  firstFormulaLike: First | null = null;
  private texts: (string | undefined)[];
  private readonly known = new Map<string, string>();
  private readonly choices: ReadonlyMap<string, string> | null;

  constructor(choices: readonly string[] | null, expected: number) {
    super([], 0);
    this.kinds = new Uint8Array(expected);
    this.texts = new Array<string | undefined>(expected);
    this.choices = choices ? new Map(choices.map((c) => [c.trim().toLowerCase(), c])) : null;
  }

  protected override reserve(count: number): void {
    const need = this.length + count;
    if (need <= this.kinds.length) return;
    const kinds = new Uint8Array(Math.max(need, Math.ceil(this.kinds.length * 1.5)));
    kinds.set(this.kinds);
    this.kinds = kinds;
  }

  put(rows: readonly (readonly string[])[], at: number): void {
    this.reserve(rows.length);
    const { kinds, texts, known } = this;
    let row = this.length;
    for (let i = 0; i < rows.length; i++, row++) {
      const text = rows[i]![at];
      if (text === undefined || text === '' || (text.charCodeAt(0) <= 32 && text.trim() === '')) {
        this.blank++;
        continue;
      }
      let own = known.get(text);
      if (own === undefined) {
        own = ownText(bare(text));
        if (known.size < MEMORY) known.set(own === text ? own : ownText(text), own);
      }
      const choice = this.choices ? this.choices.get(own.trim().toLowerCase()) : own;
      if (choice === undefined) {
        this.hold(
          row,
          own,
          note('not-a-choice', { text: own, choices: [...this.choices!.values()].join(', ') }),
        );
        continue;
      }
      kinds[row] = CellKind.text;
      texts[row] = choice;
      this.filled++;
      if (own.length < text.length) {
        this.apostrophes++;
        this.firstApostrophe ??= { row, text: ownText(text) };
      }
      const c = own.charCodeAt(0);
      if ((c === 61 || c === 64) && own.length > 1) {
        this.formulaLike++;
        this.firstFormulaLike ??= { row, text: own };
      }
    }
    this.length = row;
  }

  override finish(): ReturnType<Lane['finish']> {
    this.numbers = new Float64Array(this.length);
    return super.finish();
  }

  protected override textList(): readonly (string | undefined)[] | null {
    this.texts.length = this.length;
    return this.filled > 0 ? this.texts : null;
  }
}

/** Yes and no. */
export class YesNoLane extends Lane {
  private readonly words: ReadonlyMap<string, boolean>;
  private readonly yes: readonly string[];
  private readonly no: readonly string[];

  constructor(missing: readonly string[], yes: readonly string[], no: readonly string[], expected: number) {
    super(missing, expected);
    this.yes = yes;
    this.no = no;
    this.words = new Map([
      ...no.map((word) => [word.toLowerCase(), false] as const),
      ...yes.map((word) => [word.toLowerCase(), true] as const),
    ]);
  }

  put(rows: readonly (readonly string[])[], at: number): void {
    this.reserve(rows.length);
    let row = this.length;
    for (let i = 0; i < rows.length; i++, row++) {
      const raw = rows[i]![at];
      const text = raw === undefined ? '' : raw.trim();
      if (text === '') {
        this.blank++;
        continue;
      }
      const value = this.words.get(text.toLowerCase());
      if (value !== undefined) {
        this.kinds[row] = CellKind.yesNo;
        this.numbers[row] = value ? 1 : 0;
        this.filled++;
      } else if (!this.isMissing(text))
        this.hold(row, raw!, note('not-yes-no', { text, yes: this.yes.join(', '), no: this.no.join(', ') }));
    }
    this.length = row;
  }
}
