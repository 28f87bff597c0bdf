import type { Locale } from './locale.ts';

/** Serial day of 1970-01-01 when day 0 is 1899-12-30, as formulas count days. */
const EPOCH = 25569;
const DAY = 86_400_000;
const FIRST_YEAR = 1583;
const LAST_YEAR = 9999;

/** Serial day of a date of the Gregorian calendar, or undefined for a day that does not exist. */
export function serialOf(year: number, month: number, day: number): number | undefined {
  if (year < FIRST_YEAR || year > LAST_YEAR) return undefined;
  const time = Date.UTC(year, month - 1, day);
  const date = new Date(time);
  if (date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day) return undefined;
  return time / DAY + EPOCH;
}

/** Year, month, day and the part of the day of a serial. */
export function partsOf(serial: number): { year: number; month: number; day: number; time: number } {
  const whole = Math.floor(serial);
  const date = new Date((whole - EPOCH) * DAY);
  return {
    year: date.getUTCFullYear(),
    month: date.getUTCMonth() + 1,
    day: date.getUTCDate(),
    time: serial - whole,
  };
}

/** ISO 8601 text of a serial: `2024-03-01`, with a time of day `2024-03-01T13:30`, to the millisecond; undefined when no year of four figures. */
export function isoFromSerial(serial: number): string | undefined {
  const ms = Math.round((serial - EPOCH) * DAY);
  if (!Number.isFinite(ms) || Math.abs(ms) > 8.64e15) return undefined;
  const date = new Date(ms);
  const year = date.getUTCFullYear();
  if (year < FIRST_YEAR || year > LAST_YEAR) return undefined;
  const text = date.toISOString();
  if (text.endsWith('T00:00:00.000Z')) return text.slice(0, 10);
  if (text.endsWith(':00.000Z')) return text.slice(0, 16);
  return text.endsWith('.000Z') ? text.slice(0, 19) : text.slice(0, 23);
}

const ISO = /^(\d{4})-(\d{2})-(\d{2})(?:[T ](\d{2}):(\d{2})(?::(\d{2})(?:\.(\d{1,3}))?)?Z?)?$/;

/** The serial of an ISO 8601 date, with or without a time of day, or undefined. */
export function serialFromIso(text: string): number | undefined {
  const found = ISO.exec(text);
  if (!found) return undefined;
  const [, y, m, d, hour = '0', minute = '0', second = '0', part = ''] = found;
  const day = serialOf(Number(y), Number(m), Number(d));
  return day === undefined
    ? undefined
    : withTime(day, Number(hour), Number(minute), Number(second), Number(part.padEnd(3, '0')));
}

function withTime(day: number, hour: number, minute: number, second: number, ms = 0): number | undefined {
  if (hour > 23 || minute > 59 || second > 59) return undefined;
  return day + (((hour * 60 + minute) * 60 + second) * 1000 + ms) / DAY;
}

const SHORT = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const MONTHS = SHORT.map((name) => name.toLowerCase());
const FIGURES = /^(\d{1,4})([./\-\s])\s?(\d{1,2})\2\s?(\d{1,4})\.?$/;
const DAY_FIRST = /^(\d{1,2})(?:st|nd|rd|th)?[\s.-]*([a-z]{3,9})[\s.,-]*(\d{4}|\d{2})$/i;
const MONTH_FIRST = /^([a-z]{3,9})[\s.-]*(\d{1,2})(?:st|nd|rd|th)?[\s.,-]+(\d{4}|\d{2})$/i;
const TIME = /^(.*\S)[T\s,]+(\d{1,2}):(\d{2})(?::(\d{2}))?\s*([ap]\.?m\.?)?$/i;

/**
 * The serial of a date as people write it, by the order of the locale, or undefined. Years of two figures: 69–99 are
 * 19.., 00–68 are 20.. (as IEEE Std 1003.1, strptime %y).
 */
export function readDate(text: string, locale: Pick<Locale, 'dateOrder'>): number | undefined {
  const trimmed = text.trim();
  const iso = serialFromIso(trimmed);
  if (iso !== undefined) return iso;
  const timed = TIME.exec(trimmed);
  const day = readDay(timed ? timed[1]! : trimmed, locale.dateOrder);
  if (!timed || day === undefined) return day;
  const half = timed[5]?.[0]?.toLowerCase();
  const hour = Number(timed[2]);
  if (half && (hour < 1 || hour > 12)) return undefined;
  return withTime(
    day,
    half ? (hour % 12) + (half === 'p' ? 12 : 0) : hour,
    Number(timed[3]),
    Number(timed[4] ?? 0),
  );
}

function readDay(text: string, order: Locale['dateOrder']): number | undefined {
  if (/^\d{8}$/.test(text)) return serialOf(+text.slice(0, 4), +text.slice(4, 6), +text.slice(6));
  const figures = FIGURES.exec(text);
  if (figures) {
    const [, a, , b, c] = figures as unknown as [string, string, string, string, string];
    if (a.length === 4) return serialOf(+a, +b, +c);
    if (a.length === 3 || c.length === 3 || c.length === 1) return undefined;
    if (c.length === 4) return order === 'mdy' ? serialOf(+c, +a, +b) : serialOf(+c, +b, +a);
    if (order === 'ymd') return serialOf(century(a), +b, +c);
    return order === 'mdy' ? serialOf(century(c), +a, +b) : serialOf(century(c), +b, +a);
  }
  const named = DAY_FIRST.exec(text);
  if (named) return serialOf(century(named[3]!), monthOf(named[2]!), Number(named[1]));
  const other = MONTH_FIRST.exec(text);
  return other ? serialOf(century(other[3]!), monthOf(other[1]!), Number(other[2])) : undefined;
}

const FULL = 'january february march april may june july august september october november december'.split(
  ' ',
);
function monthOf(word: string): number {
  const key = word.toLowerCase();
  return (
    (FULL.some((name) => name.startsWith(key)) || key === 'sept' ? MONTHS.indexOf(key.slice(0, 3)) : -1) + 1
  );
}

function century(text: string): number {
  const year = Number(text);
  return text.length > 2 ? year : year + (year >= 69 ? 1900 : 2000);
}

/** A date on screen and paper, which nobody reads in another order: 8 Sep 2025, with the time of day if it has one. */
export function writeDate(serial: number): string {
  const iso = isoFromSerial(serial);
  if (iso === undefined) return String(serial);
  const [date = '', time] = iso.split('T');
  const [year, month, day] = date.split('-');
  const words = `${Number(day)} ${SHORT[Number(month) - 1]} ${year}`;
  return time ? `${words} ${time}` : words;
}

/**
 * A date as it is typed, with figures alone in the order of the locale: 2024-03-01, 01.03.2024 or 03/01/2024, with the
 * time of day if it has one.
 */
export function dateToType(serial: number, locale: Pick<Locale, 'dateOrder'>): string {
  const iso = isoFromSerial(serial);
  if (iso === undefined) return String(serial);
  const [date = '', time] = iso.split('T');
  const [y, m, d] = date.split('-');
  const day =
    locale.dateOrder === 'dmy' ? `${d}.${m}.${y}` : locale.dateOrder === 'mdy' ? `${m}/${d}/${y}` : date;
  return time ? `${day} ${time}` : day;
}

/** A moment by the clock of this machine, written as dates are: 8 Sep 2025; with `time` to the minute, 8 Sep 2025 14:05. */
export function writeMoment(moment: Date, { time = false } = {}): string {
  const minutes = time ? (moment.getHours() * 60 + moment.getMinutes()) / 1440 : 0;
  const text = writeDate(today(moment) + minutes);
  return time && minutes === 0 ? `${text} 00:00` : text;
}

/** Today's serial day, by the clock of this machine. */
export function today(now: Date = new Date()): number {
  return Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / DAY + EPOCH;
}
