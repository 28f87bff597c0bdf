import { defineFunction } from '../core/define.ts';
import { isIssue } from '../core/issue.ts';
import { definition } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { dayOf } from '../log/day.ts';
import { athlete, athletes, dates, days, logNotes, on, rowsOf, values, whoClash } from '../log/request.ts';
import { windowOf } from '../log/window.ts';

/** TRAIN.SUM(dates, values, on, [days=7], [athletes], [athlete]): sum over (on − days, on]. @throws nothing; no rows at all #N/A. */
export default defineFunction({
  name: 'TRAIN.SUM',
  family: 'training log',
  summary: 'Load of the days up to a day: the sum over a window of the log.',
  searchWords: ['weekly load', 'rolling sum', 'acute load', 'last 7 days', 'tonnage of the week'],
  parameters: [dates, values, on, days, athletes, athlete],
  result: {
    is: 'number',
    unit: '',
    about: 'sum of the values in the window, in their unit',
    measures: { same: [1] },
  },
  rule: 'Σ values with on − days < date ≤ on',
  sources: [definition('a sum over a window of days')],
  notes: [...logNotes, 'A window without rows gives 0, a log or an athlete without any row #N/A.'],
  examples: [
    {
      formula: '=TRAIN.SUM({46027;46028;46030;46031;46032}, {360;540;480;300;720}, 46033)',
      gives: 2400,
      says: 'a week with two days off',
    },
    {
      formula: '=TRAIN.SUM({46027;46027;46028}, {100;50;70}, 46028, 2, {"Ida";"Bo";" ida "}, "IDA")',
      gives: 170,
      says: 'one athlete’s rows, however the name is typed',
    },
    { formula: '=TRAIN.SUM({46027;46028}, {100;50}, 46100)', gives: 0 },
  ],
  seeAlso: ['TRAIN.MEAN', 'TRAIN.ACWR', 'TRAIN.EWMA', 'TRAIN.VOLUME'],
  typical: [columnRange(46027, 46028, 46030), columnRange(360, 540, 480), 46031, 7],
  clash: (_dates, _values, _on, _days, names, name) => whoClash(names, name),
  compute: (dates, values, on, days, names, name) => {
    const series = rowsOf(dates, values, names, name);
    if (isIssue(series)) return series;
    return windowOf(series, dayOf(on) - days + 1, dayOf(on)).total;
  },
});
