import { defineFunction } from '../core/define.ts';
import { isIssue } from '../core/issue.ts';
import { definition } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { dayOf, dayText } from '../log/day.ts';
import { lastPlace } from '../log/log.ts';
import { athlete, athletes, dates, nothing, on, rowNotes, rowsOf, values, whoClash } from '../log/request.ts';

/** TRAIN.SINCE(dates, values, on, [athletes], [athlete]): days since the latest row. @throws nothing; none up to then #N/A. */
export default defineFunction({
  name: 'TRAIN.SINCE',
  family: 'training log',
  summary: 'Days since the latest row of the log.',
  searchWords: ['days since', 'last session', 'overdue test', 'absence'],
  parameters: [dates, values, on, athletes, athlete],
  result: { is: 'number', unit: 'days', about: 'days from the latest row to the day given' },
  rule: 'on − the last date ≤ on',
  sources: [definition('a difference of days')],
  notes: [...rowNotes, 'A row on the day itself gives 0.'],
  examples: [
    { formula: '=TRAIN.SINCE({46001;46010}, {140;155}, 46015)', gives: 5 },
    { formula: '=TRAIN.SINCE({46001;46010}, {140;155}, 46010)', gives: 0 },
  ],
  seeAlso: ['TRAIN.LAST'],
  typical: [columnRange(46001, 46010, 46020), columnRange(140, 155, 150), 46025],
  directions: { on: 1 },
  clash: (_dates, _values, _on, names, name) => whoClash(names, name),
  compute: (dates, values, on, names, name) => {
    const series = rowsOf(dates, values, names, name);
    if (isIssue(series)) return series;
    const place = lastPlace(series.rowDays, dayOf(on));
    return place < 0 ? nothing(`up to ${dayText(dayOf(on))}`, name) : dayOf(on) - series.rowDays[place]!;
  },
});
