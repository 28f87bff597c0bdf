import { partsOf, serialOf as serialOfDay } from '../../units/date.ts';
import type { DateOrder } from '../api.ts';
import { LONGEST_VALUE } from '../words.ts';

/** Month names by their first letters, without accents: English, German, French, Spanish, Italian, Dutch, Portuguese. */
const months: readonly (readonly string[])[] = [
  ['jan', 'ene', 'gen'],
  ['feb', 'fev', 'fevr'],
  ['mar', 'mrz', 'maerz', 'mrt', 'maa'],
  ['apr', 'avr', 'abr'],
  ['may', 'mai', 'mag', 'mei'],
  ['jun', 'juin', 'giu'],
  ['jul', 'juil', 'lug'],
  ['aug', 'aou', 'ago'],
  ['sep', 'set'],
  ['oct', 'okt', 'ott', 'out'],
  ['nov'],
  ['dec', 'dez', 'dic'],
];

function monthOf(word: string): number {
  const w = word
    .normalize('NFD')
    .replace(/[\u0300-\u036f.]/g, '')
    .toLowerCase();
  if (w.length < 3) return 0;
  return months.findIndex((starts) => starts.some((start) => w.startsWith(start))) + 1;
}

const serialOf = (year: number, month: number, day: number): number =>
  serialOfDay(year, month, day) ?? Number.NaN;

/** The day and the month of a serial change places; NaN when that is no day. */
export function swapDayAndMonth(serial: number): number {
  const { year, month, day, time } = partsOf(serial);
  return serialOf(year, day, month) + time;
}

/** Years of two digits: 69–99 are 1969–1999, 00–68 are 2000–2068 (POSIX.1-2017, strptime, %y). */
const fullYear = (text: string): number =>
  text.length > 2 ? Number(text) : Number(text) + (Number(text) >= 69 ? 1900 : 2000);

const TIME = String.raw`(?:(?:T|\s+|,\s*)(\d{1,2}):(\d{2})(?::(\d{2}(?:[.,]\d+)?))?\s*([ap]\.?m\.?)?\s*(Z|UTC|GMT|[+-]\d{2}:?\d{2})?)?`;
const DAY_NAME = String.raw`(?:\p{L}{2,10}\.?,?\s+)?`;
const YMD = new RegExp(`^(\\d{4})([-/.])(\\d{1,2})\\2(\\d{1,2})\\.?${TIME}$`, 'iu');
const OPEN = new RegExp(`^${DAY_NAME}(\\d{1,2})([-/.])\\s?(\\d{1,2})\\2\\s?(\\d{4}|\\d{2})${TIME}$`, 'iu');
const DAY_FIRST_NAMED = new RegExp(
  `^${DAY_NAME}(\\d{1,2})(?:\\.|st|nd|rd|th)?[-/\\s]*(?:de\\s+)?(\\p{L}{3,10})\\.?[-/\\s,]*(?:de\\s+)?(\\d{4}|\\d{2})${TIME}$`,
  'iu',
);
const MONTH_FIRST_NAMED = new RegExp(
  `^${DAY_NAME}(\\p{L}{3,10})\\.?[-/\\s]*(\\d{1,2})(?:st|nd|rd|th)?[-/\\s,]+(\\d{4}|\\d{2})${TIME}$`,
  'iu',
);
const YEAR_FIRST_NAMED = new RegExp(`^(\\d{4})[-/\\s](\\p{L}{3,10})[-/\\s](\\d{1,2})${TIME}$`, 'iu');
const COMPACT = /^(\d{4})(\d{2})(\d{2})$/;

/** A date as it is written: what it says in each order (NaN where that is no day). */
export interface DateReading {
  /** How the order is told: by the form itself, or not at all. */
  readonly form: 'ymd' | 'named' | 'dotted' | 'open';
  readonly dmy: number;
  readonly mdy: number;
  readonly zone: boolean;
}

/** Reads a date in any of the forms known here; null when it is none. `compact` takes 20240131 too. */
export function readDateForms(text: string, compact = false): DateReading | null {
  const t = text.trim();
  if (t.length > LONGEST_VALUE) return null;
  let m = YMD.exec(t);
  if (m) return one('ymd', serialOf(Number(m[1]), Number(m[3]), Number(m[4])), timeOf(m, 5), m[9]);
  m = OPEN.exec(t);
  if (m) {
    const year = fullYear(m[4]!);
    const time = timeOf(m, 5);
    const dmy = serialOf(year, Number(m[3]), Number(m[1])) + time;
    const mdy = serialOf(year, Number(m[1]), Number(m[3])) + time;
    if (Number.isNaN(dmy) && Number.isNaN(mdy)) return null;
    return { form: m[2] === '.' ? 'dotted' : 'open', dmy, mdy, zone: m[9] !== undefined };
  }
  m = DAY_FIRST_NAMED.exec(t);
  if (m) return one('named', serialOf(fullYear(m[3]!), monthOf(m[2]!), Number(m[1])), timeOf(m, 4), m[8]);
  m = MONTH_FIRST_NAMED.exec(t);
  if (m) return one('named', serialOf(fullYear(m[3]!), monthOf(m[1]!), Number(m[2])), timeOf(m, 4), m[8]);
  m = YEAR_FIRST_NAMED.exec(t);
  if (m) return one('named', serialOf(Number(m[1]), monthOf(m[2]!), Number(m[3])), timeOf(m, 4), m[8]);
  if (compact) {
    m = COMPACT.exec(t);
    if (m) return one('ymd', serialOf(Number(m[1]), Number(m[2]), Number(m[3])), 0, undefined);
  }
  return null;
}

function one(form: 'ymd' | 'named', day: number, time: number, zone: string | undefined): DateReading | null {
  const serial = day + time;
  return Number.isNaN(serial) ? null : { form, dmy: serial, mdy: serial, zone: zone !== undefined };
}

/** The time of day as a fraction: 0 without one, NaN when it is none. Groups: hours, minutes, seconds, am or pm. */
function timeOf(m: RegExpExecArray, from: number): number {
  if (m[from] === undefined) return 0;
  let hours = Number(m[from]);
  const minutes = Number(m[from + 1]);
  const seconds = Number((m[from + 2] ?? '0').replace(',', '.'));
  const half = m[from + 3]?.[0]?.toLowerCase();
  if (half && (hours < 1 || hours > 12)) return Number.NaN;
  if (half) hours = (hours % 12) + (half === 'p' ? 12 : 0);
  if (hours > 23 || minutes > 59 || seconds >= 60) return Number.NaN;
  return (hours * 3600 + minutes * 60 + seconds) / 86_400;
}

const digit = (text: string, at: number): number => {
  const c = text.charCodeAt(at) - 48;
  return c >= 0 && c <= 9 ? c : Number.NaN;
};

/** The serial of a date in this order, or NaN. Dates that say their order themselves are read whatever the order. */
export function readDate(text: string, order: DateOrder, compact = false): number {
  if (text.length === 10 && text.charCodeAt(4) === 45 && text.charCodeAt(7) === 45) {
    const year = digit(text, 0) * 1000 + digit(text, 1) * 100 + digit(text, 2) * 10 + digit(text, 3);
    const serial = serialOf(year, digit(text, 5) * 10 + digit(text, 6), digit(text, 8) * 10 + digit(text, 9));
    if (!Number.isNaN(serial)) return serial;
  }
  const reading = readDateForms(text, compact);
  if (!reading) return Number.NaN;
  if (reading.form === 'ymd' || reading.form === 'named') return reading.dmy;
  return order === 'mdy' ? reading.mdy : reading.dmy;
}
