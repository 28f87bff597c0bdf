/** Builds a column of dates from texts, as long as their order is open in both ways. */
import { CellKind } from '../../book/cells.ts';
import { isoFromSerial } from '../../units/date.ts';
import type { DateOrder } from '../api.ts';
import { note } from '../sentences/index.ts';
import { ColumnBuilder, type First, MEMORY, ownText } from './column-builder.ts';
import { readDate, readDateForms, swapDayAndMonth } from './read-date.ts';

export interface DateColumnOptions {
  readonly missing: readonly string[];
  readonly order: DateOrder;
  /** The order was not proven, so the whole column may still prove another. */
  readonly open: boolean;
  /** 20240131 is a date here. */
  readonly compact: boolean;
  /** Dates after this serial are doubted. */
  readonly latest: number;
}

/** Dates as serial days. */
export class DateColumnBuilder extends ColumnBuilder {
  future = 0;
  firstFuture: First | null = null;
  order: DateOrder;
  /** A date was seen that cannot be read in the other order. */
  private fixed = false;
  private readonly o: DateColumnOptions;
  private readonly seen = new Map<string, number>();

  constructor(options: DateColumnOptions, expected: number) {
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

  private recountFuture(): void {
    this.future = 0;
    this.firstFuture = null;
    for (let row = 0; row < this.length; row++) {
      if (this.kinds[row] !== CellKind.date || !(this.numbers[row]! > this.o.latest)) continue;
      this.future++;
      this.firstFuture ??= { row, text: isoFromSerial(this.numbers[row]!) ?? '' };
    }
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
    this.recountFuture();
    return true;
  }
}

function fixesOrder(text: string, order: DateOrder): boolean {
  const reading = readDateForms(text);
  if (!reading) return false;
  if (reading.form === 'ymd' || reading.form === 'named') return true;
  return Number.isNaN(order === 'mdy' ? reading.dmy : reading.mdy);
}
