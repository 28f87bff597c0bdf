import { type Issue, isIssue, issue } from '../core/issue.ts';
import type { Range } from '../core/value.ts';
import { dayOf, dayText } from './day.ts';
import { rowsOf, tooShort, who } from './request.ts';
import { dailySd, equalDays, windowOf } from './window.ts';

export interface Monotony {
  readonly total: number;
  readonly mean: number;
  readonly sd: number;
  readonly monotony: number;
}

/** Mean and SD of the daily values of (on − days, on], or why there are none. */
export function monotonyOf(
  dates: Range,
  values: Range,
  on: number,
  days: number,
  names: Range | undefined,
  name: string | undefined,
  divisor: 'sample' | 'population',
): Monotony | Issue {
  if (days === 1)
    return issue('#N/A', 'too-few', {
      parameter: 'days',
      expected: '2 days or more',
      details: { have: 'one day' },
      remedy: 'Lengthen the window.',
    });
  const series = rowsOf(dates, values, names, name);
  if (isIssue(series)) return series;
  const end = dayOf(on);
  const short = tooShort(series, end - days + 1, name);
  if (short) return short;
  const window = windowOf(series, end - days + 1, end);
  if (equalDays(window))
    return issue('#DIV/0!', 'equal-days', {
      parameter: 'values',
      details: { days, on: dayText(end), ...who(name) },
    });
  const mean = window.total / days;
  const sd = dailySd(window, divisor);
  return { total: window.total, mean, sd, monotony: mean / sd };
}
