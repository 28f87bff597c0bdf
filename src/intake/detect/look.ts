/** Counts what the cells of a column look like. */
import {
  type DateReading,
  durationUse,
  type MarkUse,
  markUse,
  readDateForms,
  readUnitCell,
} from '../cells/index.ts';
import { missingWords, yesNoPairs } from '../words.ts';

const missing = new Set(missingWords);
const yesWords = new Set(yesNoPairs.flatMap(([yes]) => yes));
const noWords = new Set(yesNoPairs.flatMap(([, no]) => no));

/** A count with the first text that was counted. */
class Tally<K> {
  readonly counts = new Map<K, number>();
  readonly examples = new Map<K, string>();
  add(key: K, example: string, times: number): void {
    this.counts.set(key, (this.counts.get(key) ?? 0) + times);
    if (!this.examples.has(key)) this.examples.set(key, example);
  }
  of(...keys: readonly K[]): number {
    return keys.reduce((sum, key) => sum + (this.counts.get(key) ?? 0), 0);
  }
  example(...keys: readonly K[]): string | undefined {
    for (const key of keys) if (this.examples.has(key)) return this.examples.get(key);
    return undefined;
  }
}

const FAILED = /^#(DIV\/0!|REF!|VALUE!|NUM!|NAME\?|NULL!|SPILL!|CALC!|CYCLE!|ERROR!)$|^=./;

type DateUse = 'self' | 'dotted' | 'dmy' | 'mdy' | 'open' | 'zone';
type DurationWay = 'three parts' | 'open' | 'h:mm' | 'm:ss' | 'words';

const EXAMPLES = 3;
const LONGEST_EXAMPLE = 60;
const MOST_DISTINCT = 200;

/** What the cells of one column look like, counted. */
export class ColumnLook {
  /** Cells that say something about a value of their kind. */
  filled = 0;
  /** Error values and formulas without a value: they fit no kind and speak for none. */
  failed = 0;
  blank = 0;
  readonly missing = new Tally<string>();
  readonly numbers = new Tally<Exclude<MarkUse, 'none'>>();
  leadingZeros = 0;
  leadingZeroExample = '';
  longest = 0;
  readonly units = new Tally<string>();
  readonly perCent = new Tally<'%'>();
  readonly dates = new Tally<DateUse>();
  compactDates = 0;
  readonly durations = new Tally<DurationWay>();
  yes = 0;
  no = 0;
  readonly yesNoSeen = new Set<string>();
  readonly examples: string[] = [];
  readonly distinct = new Set<string>();

  /** Counts a cell that stands so many times in the column. */
  see(cell: string, times = 1): void {
    const text = cell.trim();
    if (text === '') {
      this.blank += times;
      return;
    }
    const key = text.toLowerCase();
    if (missing.has(key)) {
      this.missing.add(text, text, times);
      return;
    }
    if (FAILED.test(text)) {
      this.failed += times;
      return;
    }
    this.filled += times;
    if (this.examples.length < EXAMPLES) this.keepExample(text);
    if (this.distinct.size < MOST_DISTINCT) this.distinct.add(key);
    if (yesWords.has(key)) this.yes += times;
    if (noWords.has(key)) this.no += times;
    if (yesWords.has(key) || noWords.has(key)) this.yesNoSeen.add(key);
    const use = markUse(text);
    if (use !== 'none') {
      this.seeNumber(text, use, times);
      return;
    }
    const date = readDateForms(text);
    if (date) this.seeDate(text, date, times);
    const duration = durationUse(text);
    if (duration)
      this.durations.add(
        duration.form === 'two parts' ? (duration.proves ?? 'open') : duration.form,
        text,
        times,
      );
    const own = date ? null : readUnitCell(text);
    if (own?.word === '%') this.perCent.add('%', text, times);
    else if (own) this.units.add(own.word, text, times);
    // A number inside decides the decimal mark, too.
    if (own && own.number !== '') {
      const inner = markUse(own.number);
      if (inner !== 'none') this.numberInside.add(inner, own.number, times);
    }
  }

  private keepExample(text: string): void {
    const shown = text.slice(0, LONGEST_EXAMPLE).replace(/\s+/g, ' ');
    if (!this.examples.includes(shown)) this.examples.push(shown);
  }

  /** Marks of numbers that stand before a unit. */
  readonly numberInside = new Tally<Exclude<MarkUse, 'none'>>();

  private seeNumber(text: string, use: Exclude<MarkUse, 'none'>, times: number): void {
    this.numbers.add(use, text, times);
    if (text.length > this.longest) this.longest = text.length;
    if (/^0\d+$/.test(text)) {
      this.leadingZeros += times;
      this.leadingZeroExample ||= text;
    }
    if (/^(19|20)\d{6}$/.test(text) && readDateForms(text, true)) this.compactDates += times;
  }

  private seeDate(text: string, reading: DateReading, times: number): void {
    const { form, dmy, mdy, zone } = reading;
    if (zone) this.dates.add('zone', text, times);
    if (form === 'ymd' || form === 'named') this.dates.add('self', text, times);
    else if (Number.isNaN(mdy)) this.dates.add('dmy', text, times);
    else if (Number.isNaN(dmy)) this.dates.add('mdy', text, times);
    else this.dates.add(form === 'dotted' ? 'dotted' : 'open', text, times);
  }
}
