/**
 * TEXT: numbers and texts by the format language of ISO/IEC 29500-1, 18.8.31 (number formats), which a package reads. Days
 * count as everywhere in the language (1900-03-01 is 61, and no 29 February 1900); years go from 1900 to 9999.
 */
import { CellError, ErrorType } from 'hyperformula';
import { format, getFormatDateInfo, isDateFormat } from 'numfmt';

/** 1 January 1900 and the day after 31 December 9999. */
const FIRST_DAY = 2;
const END = 2_958_466;
/** The finest step that a format shows, in days: what is nearer to midnight than half of it shows as the next day. */
const THOUSANDTH = 1 / 86_400_000;

const noFormat = () => new CellError(ErrorType.VALUE, 'Incorrect number format.');
const noDate = () => new CellError(ErrorType.VALUE, 'Years outside 1900 to 9999 have no date.');
const noTime = () => new CellError(ErrorType.VALUE, 'A time cannot be negative.');

/** Hours, minutes or seconds in brackets count on beyond a day, and may be negative. */
const ELAPSED = /\[(h+|m+|s+)\]/i;

const options = { leap1900: false, dateErrorThrows: true } as const;

/** A language in a format, with or without a currency: names of months and days are English wherever a book is opened. */
const LANGUAGE = /\[\$([^\]-]*)-[^\]]*\]/g;

/** A value in a format; #VALUE! for what is no format, and for days and times that have none. */
export function formatted(value: number | string, given: string): string | CellError {
  if (given === '') return '';
  const pattern = given.replaceAll(LANGUAGE, (_, currency) => (currency ? `[$${currency}]` : ''));
  try {
    if (typeof value === 'number' && isDateFormat(pattern)) return ofDay(value, pattern);
    return format(pattern, value, options);
  } catch {
    return noFormat();
  }
}

function ofDay(day: number, pattern: string): string | CellError {
  const { year, month, day: ofMonth, hours, seconds } = getFormatDateInfo(pattern);
  // minutes before seconds (mm:ss) are given as a month
  const isDate = year || ofMonth || (month && !hours && !seconds);
  if (isDate && (day < FIRST_DAY || day > END - THOUSANDTH)) return noDate();
  if (day >= 0 || isDate) return format(pattern, day, options);
  // the package counts a negative time from the day before
  return ELAPSED.test(pattern) && !pattern.includes(';') ? `-${format(pattern, -day, options)}` : noTime();
}
