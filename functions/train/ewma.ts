import { defineFunction } from '../core/define.ts';
import { isIssue } from '../core/issue.ts';
import { number } from '../core/parameter.ts';
import { assumption, published } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { dayOf } from '../log/day.ts';
import {
  athlete,
  athletes,
  dates,
  logNotes,
  on,
  rowsOf,
  tooShort,
  values,
  whoClash,
} from '../log/request.ts';
import { weightedMean } from '../log/window.ts';

/** TRAIN.EWMA(dates, values, on, days, [athletes], [athlete]): weighted mean per day. @throws nothing; a day before the log #N/A. */
export default defineFunction({
  name: 'TRAIN.EWMA',
  family: 'training log',
  summary: 'Exponentially weighted mean of the daily load: recent days weigh most.',
  searchWords: ['exponentially weighted moving average', 'fitness', 'fatigue', 'smoothing'],
  parameters: [
    dates,
    values,
    on,
    number('days', 'days', 'time constant N; λ = 2/(N + 1)', {
      bounds: { min: 1, because: 'Below a day λ would exceed 1.' },
    }),
    athletes,
    athlete,
  ],
  result: {
    is: 'number',
    unit: '',
    about: 'weighted mean per day, in the unit of the values',
    measures: { of: 1, per: 'day' },
  },
  rule: 'level = λ · load of the day + (1 − λ) · level of the day before; λ = 2/(days + 1); the first logged day seeds it with its own load',
  sources: [
    published('Williams et al. 2017, Br J Sports Med 51:209–210'),
    assumption('The seed is the load of the first logged day; the source leaves it open'),
  ],
  notes: [
    ...logNotes,
    'The seed weighs on the first weeks of a log: with 28 days, 12 % of it is left after a month.',
  ],
  examples: [
    { formula: '=TRAIN.EWMA({46001;46002}, {0;1}, 46002, 7)', gives: 0.25, says: 'λ = 2/8' },
    {
      formula: '=TRAIN.EWMA({46001;46004}, {80;40}, 46004, 3)',
      gives: 30,
      says: '80, 40, 20, then half of 20 and half of 40',
    },
  ],
  seeAlso: ['TRAIN.EWMA.RATIO', 'TRAIN.MEAN'],
  typical: [columnRange(45990, 46010, 46014, 46016), columnRange(300, 300, 400, 500), 46017, 7],
  clash: (_dates, _values, _on, _days, names, name) => whoClash(names, name),
  compute: (dates, values, on, days, names, name) => {
    const series = rowsOf(dates, values, names, name);
    if (isIssue(series)) return series;
    return tooShort(series, dayOf(on), name) ?? weightedMean(series, dayOf(on), days);
  },
});
