import { defineFunction } from '../core/define.ts';
import { isIssue, issue } from '../core/issue.ts';
import { optionOr } from '../core/parameter.ts';
import { definition, secondary } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { dayOf } from '../log/day.ts';
import { between } from '../log/log.ts';
import {
  athlete,
  athletes,
  dates,
  fromMaybe,
  rowNotes,
  rowsOf,
  spanClash,
  toMaybe,
  values,
  who,
  whoClash,
} from '../log/request.ts';
import { allEqual, lineThrough } from '../statistics/line.ts';
import { theilSen } from '../statistics/theil-sen.ts';

const DAYS_A_WEEK = 7;

/** TRAIN.TREND(dates, values, [from], [to], [athletes], [athlete], [method="least-squares"]): slope per week. @throws nothing; fewer than 2 distinct days #N/A, from after to #NUM!. */
export default defineFunction({
  name: 'TRAIN.TREND',
  family: 'training log',
  summary: 'Change per week: slope of the values over time.',
  searchWords: ['slope', 'progress', 'rate of change', 'Theil-Sen', 'regression', 'kg per week'],
  parameters: [
    dates,
    values,
    fromMaybe,
    toMaybe,
    athletes,
    athlete,
    optionOr(
      'least-squares',
      'method',
      ['least-squares', 'theil-sen'],
      'least squares, or the median of all pairwise slopes, which single odd rows hardly move',
    ),
  ],
  result: {
    is: 'number',
    unit: '',
    about: 'change per week, in the unit of the values',
    measures: { of: 1, per: 'week' },
  },
  rule: 'least-squares: slope of value on date, × 7\ntheil-sen: median of (vⱼ − vᵢ)/(dⱼ − dᵢ) over all pairs of different days, × 7',
  sources: [
    definition('least squares'),
    secondary('Theil 1950, Proc K Ned Akad Wet 53:386–392; Sen 1968, J Am Stat Assoc 63:1379–1389'),
  ],
  notes: [
    ...rowNotes,
    'Both days count; left out, the log is taken from its first or to its last row. Fewer than two different days give #N/A.',
  ],
  examples: [
    { formula: '=TRAIN.TREND({46001;46008;46015}, {100;102;104})', gives: 2 },
    {
      formula: '=TRAIN.TREND({46001;46008;46015;46022}, {100;102;104;180}, , , , , "theil-sen")',
      gives: 14.3333,
      says: 'median of 2, 2, 2, 26.67, 39 and 76',
    },
    { formula: '=TRAIN.TREND({46001;46008;46015}, {100;102;104}, 46002)', gives: 2 },
  ],
  seeAlso: ['TRAIN.BEST', 'COHORT.FIT'],
  typical: [columnRange(46001, 46010, 46020), columnRange(140, 155, 150)],
  clash: (_dates, _values, _from, _to, names, name) => whoClash(names, name),
  compute: (dates, values, from, to, names, name, method) => {
    const first = from === undefined ? undefined : dayOf(from);
    const last = to === undefined ? undefined : dayOf(to);
    const clash = spanClash(first, last);
    if (clash) return clash;
    const series = rowsOf(dates, values, names, name);
    if (isIssue(series)) return series;
    const [start, end] = between(
      series.rowDays,
      first ?? Number.NEGATIVE_INFINITY,
      last ?? Number.POSITIVE_INFINITY,
    );
    const x = series.rowDays.subarray(start, end);
    const y = series.rowValues.subarray(start, end);
    if (x.length === 0 || allEqual(x))
      return issue('#N/A', 'too-few', {
        parameter: 'dates',
        expected: 'rows on 2 different days',
        details: { have: x.length === 0 ? 'no row in this time' : 'only one day in this time', ...who(name) },
      });
    const slope = method === 'theil-sen' ? theilSen(x, y) : lineThrough({ a: x, b: y, n: x.length }).slope;
    return slope * DAYS_A_WEEK;
  },
});
