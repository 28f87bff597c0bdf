import { defineFunction } from '../core/define.ts';
import { isIssue } from '../core/issue.ts';
import { definition } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { dayOf } from '../log/day.ts';
import {
  athlete,
  athletes,
  dates,
  days,
  logNotes,
  on,
  rowsOf,
  tooShort,
  values,
  whoClash,
} from '../log/request.ts';
import { windowOf } from '../log/window.ts';

/** TRAIN.MEAN(dates, values, on, [days=7], [athletes], [athlete]): mean per day over (on − days, on]. @throws nothing; a window that starts before the log #N/A. */
export default defineFunction({
  name: 'TRAIN.MEAN',
  family: 'training log',
  summary: 'Mean load per day over a window of the log, days off included.',
  searchWords: ['rolling average', 'chronic load', 'daily mean', 'moving average'],
  parameters: [dates, values, on, days, athletes, athlete],
  result: {
    is: 'number',
    unit: '',
    about: 'mean per day, in the unit of the values',
    measures: { of: 1, per: 'day' },
  },
  rule: 'Σ values with on − days < date ≤ on, divided by days',
  sources: [definition('a mean over a window of days')],
  notes: [
    ...logNotes,
    'Until the log reaches back over the whole window the result is #N/A: days before the first row are unknown, not 0.',
  ],
  examples: [
    {
      formula: '=TRAIN.MEAN({46027;46028;46030;46031;46032}, {360;540;480;300;720}, 46033)',
      gives: 342.857,
      says: '2400/7',
    },
    { formula: '=TRAIN.MEAN({46027;46030}, {100;60}, 46030, 4)', gives: 40 },
    {
      formula: '=TRAIN.MEAN({46027;46030}, {100;60}, 46030, 5)',
      gives: '#N/A',
      says: 'starts a day too late',
    },
  ],
  seeAlso: ['TRAIN.SUM', 'TRAIN.EWMA', 'TRAIN.ACWR'],
  typical: [columnRange(46020, 46028, 46030), columnRange(360, 540, 480), 46031, 7],
  clash: (_dates, _values, _on, _days, names, name) => whoClash(names, name),
  compute: (dates, values, on, days, names, name) => {
    const series = rowsOf(dates, values, names, name);
    if (isIssue(series)) return series;
    const begin = dayOf(on) - days + 1;
    return tooShort(series, begin, name) ?? windowOf(series, begin, dayOf(on)).total / days;
  },
});
