import { CellKind } from '../../book/cells.ts';
import { type Dimension, dimensions } from '../../units/dimension.ts';
import { type DisplayUnit, unitFromWord } from '../../units/unit.ts';
import type { Clock } from '../api.ts';
import { note } from '../sentences/index.ts';
import { ColumnBuilder, type First, ownText } from './column-builder.ts';
import { readUnitCell } from './read-cell.ts';
import { readDuration } from './read-duration.ts';
import { type NumberStyle, readNumber } from './read-number.ts';

/** A factor as a fraction of whole numbers where it is one, so that tenths are divided and rounded once. */
export interface Scale {
  readonly per: number;
  readonly of: number;
}

/** A unit and a recipe's factor together. */
function scaleOf(unit: DisplayUnit | undefined, factor: number): Scale {
  const inverse = Math.round(1 / factor);
  const whole = factor < 1 && Math.abs(1 / factor - inverse) < 1e-9 * inverse;
  const per = (unit?.per ?? 1) * (whole ? 1 : factor);
  const of = (unit?.of ?? 1) * (whole ? inverse : 1);
  return { per, of };
}

export interface NumberColumnOptions {
  readonly missing: readonly string[];
  readonly style: NumberStyle;
  readonly dimension: Dimension | undefined;
  /** Unit of cells without one of their own. */
  readonly unit: DisplayUnit | undefined;
  /** Where the unit of each row is; null where all cells are in one. */
  readonly unitsAt: number | null;
  readonly factor: number;
  readonly clock: Clock;
  /** Cells with a unit behind the number are the habit here; else each is held. */
  readonly ownUnits: boolean;
  readonly perCent: boolean;
  readonly bounds: { readonly min: number; readonly max: number } | null;
}

/** Numbers: converted to base units; what reads otherwise is held. */
export class NumberColumnBuilder extends ColumnBuilder {
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
  private readonly o: NumberColumnOptions;
  private readonly scale: Scale;
  private firstUnit: string | undefined;

  get style(): NumberStyle {
    return this.o.style;
  }

  constructor(options: NumberColumnOptions, expected: number) {
    super(options.missing, expected);
    this.o = options;
    this.scale = scaleOf(options.unit, options.factor);
  }

  put(rows: readonly (readonly string[])[], at: number): void {
    this.reserve(rows.length);
    const { style, bounds, unitsAt } = this.o;
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
      const value = Number.isNaN(raw)
        ? this.readOther(text.trim(), text, row)
        : unitsAt === null
          ? (raw * per) / of
          : this.inUnitOf(rows[i]![unitsAt] ?? '', raw, text, row);
      if (Number.isNaN(value)) continue;
      if (!Number.isFinite(value)) {
        this.hold(row, text, note('number-too-large', { text: ownText(text) }));
        continue;
      }
      kinds[row] = CellKind.number;
      numbers[row] = value + 0;
      this.filled++;
      sum += unitsAt === null ? raw : Number.NaN;
      if (this.sample.length < 2000) this.sample.push(value);
      if (bounds && !(value >= bounds.min && value <= bounds.max)) {
        this.outside++;
        this.firstOutside ??= { row, text: ownText(text) };
      }
    }
    this.sum = sum;
    this.length = row;
  }

  /** A number in the unit that its row gives: NaN when it was held. */
  private inUnitOf(word: string, raw: number, text: string, row: number): number {
    const { dimension, factor } = this.o;
    const unit = unitFromWord(word);
    if (!unit) {
      this.hold(
        row,
        text,
        word.trim() === ''
          ? note('row-without-unit', { text })
          : note('row-unit-unknown', { text, unit: word.trim() }),
      );
      return Number.NaN;
    }
    this.firstUnit ??= unit.unit;
    if (dimension === undefined) {
      // A plain number cannot say its unit: the first unit is taken, another one would be mixed into it.
      if (unit.unit === this.firstUnit) return raw * factor;
      this.hold(row, text, note('unit-without-dimension', { text: `${text} ${unit.unit}`, unit: unit.unit }));
      return Number.NaN;
    }
    if (unit.dimension !== dimension) {
      const expected = (this.o.unit ?? unitFromWord(dimensions[dimension]))!.unit;
      this.hold(
        row,
        text,
        note('other-unit', { text: `${text} ${unit.unit}`, unit: unit.unit, dimension, expected }),
      );
      return Number.NaN;
    }
    const { per, of } = scaleOf(unit, factor);
    return (raw * per) / of;
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
    // The unit that the cells are in anyway says nothing new; another one is an exception to look at, unless it is the habit.
    if (!this.o.ownUnits && !(unit.unit === here.unit && this.o.factor === 1)) {
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
