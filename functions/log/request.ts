import { type Issue, issue } from '../core/issue.ts';
import { number, numberMaybe, numberOr, range, rangeMaybe, textMaybe } from '../core/parameter.ts';
import type { Range } from '../core/value.ts';
import { nameKey } from './athletes.ts';
import { dayText } from './day.ts';
import { type Series, seriesOf } from './log.ts';

const whole = { whole: true, bounds: { min: 1, because: 'A window has at least one day.' } } as const;

export const dates = range('dates', 'date', 'date', 'day of each row; a time of day is cut off', {
  together: 'log',
});
export const values = range('values', 'number', '', 'load or measure of each row', { together: 'log' });
export const on = number('on', 'date', 'last day included');
export const days = numberOr(7, 'days', 'days', 'length of the window that ends on that day', whole);
export const acute = numberOr(7, 'acute', 'days', 'length of the recent window', whole);
export const chronic = numberOr(28, 'chronic', 'days', 'length of the long window', whole);
export const from = number('from', 'date', 'first day included');
export const to = number('to', 'date', 'last day included');
export const fromMaybe = numberMaybe(
  'from',
  'date',
  'first day included; the first of the log when left out',
);
export const toMaybe = numberMaybe('to', 'date', 'last day included; the last of the log when left out');
export const athletes = rangeMaybe(
  'athletes',
  'text',
  '',
  'name on each row; only the rows of "athlete" count',
  { together: 'log' },
);
export const athlete = textMaybe('athlete', 'whose rows count; compared trimmed and in any case');

/** The issue of one of the two given without the other. */
export function whoClash(names: Range | undefined, name: string | undefined): Issue | undefined {
  if ((names === undefined) === (name === undefined)) return undefined;
  return issue('#N/A', 'who-incomplete', { parameter: names === undefined ? 'athletes' : 'athlete' });
}

/** The rows asked for, or the issue of there being none. */
export function rowsOf(
  datesGiven: Range,
  valuesGiven: Range,
  names: Range | undefined,
  name: string | undefined,
): Series | Issue {
  const series = seriesOf(datesGiven, valuesGiven, names, name === undefined ? undefined : nameKey(name));
  return series ?? issue('#N/A', 'no-rows', { parameter: 'dates', details: who(name) });
}

/** The issue of a window that starts before the first row, or undefined. */
export function tooShort(series: Series, begin: number, name: string | undefined): Issue | undefined {
  const first = series.days[0]!;
  if (first <= begin) return undefined;
  return issue('#N/A', 'log-too-short', {
    parameter: 'dates',
    details: { first: dayText(first), needs: dayText(begin), ...who(name) },
  });
}

/** The issue of an acute window that is not shorter than the chronic one, or undefined. */
export function windowsClash(acuteDays: number, chronicDays: number): Issue | undefined {
  if (acuteDays < chronicDays) return undefined;
  return issue('#NUM!', 'acute-too-long', {
    parameter: 'acute',
    received: acuteDays,
    details: { chronic: chronicDays },
  });
}

/** The issue of a span that ends before it begins, or undefined. */
export function spanClash(first: number | undefined, last: number | undefined): Issue | undefined {
  if (first === undefined || last === undefined || first <= last) return undefined;
  return issue('#NUM!', 'from-after-to', {
    parameter: 'from',
    details: { from: dayText(first), to: dayText(last) },
  });
}

export const nothing = (when: string, name: string | undefined): Issue =>
  issue('#N/A', 'nothing-in-time', { parameter: 'dates', details: { when, ...who(name) } });

export const who = (name: string | undefined): Readonly<Record<string, string>> =>
  name === undefined ? {} : { athlete: name.trim() };

export const logNotes: readonly string[] = [
  'Rows with a blank date or value are skipped; the time of day is cut off; several rows on one day are added; a day without a row counts 0.',
  'Give "athletes" and "athlete" together to keep one athlete\'s rows; names are compared trimmed and in any case.',
];
export const rowNotes: readonly string[] = [
  'Rows with a blank date or value are skipped; the time of day is cut off; each row is counted separately.',
  'Give "athletes" and "athlete" together to keep one athlete\'s rows; names are compared trimmed and in any case.',
];
