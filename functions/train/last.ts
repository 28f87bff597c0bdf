import { defineFunction } from '../core/define.ts';
import { isIssue } from '../core/issue.ts';
import { definition } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { dayOf, dayText } from '../log/day.ts';
import { lastPlace } from '../log/log.ts';
import { athlete, athletes, dates, nothing, on, rowNotes, rowsOf, values, whoClash } from '../log/request.ts';

/** TRAIN.LAST(dates, values, on, [athletes], [athlete]): latest value up to a day. @throws nothing; none up to then #N/A. */
export default defineFunction({
  name: 'TRAIN.LAST',
  family: 'training log',
  summary: 'Latest value of the log up to a day.',
  searchWords: ['most recent', 'current', 'newest test', 'lookup by date'],
  parameters: [dates, values, on, athletes, athlete],
  result: { is: 'number', unit: '', about: 'the latest value, in its unit', measures: { same: [1] } },
  rule: 'the value of the last date ≤ on; of rows on one day the lowest in the table',
  sources: [definition('the last row by date')],
  notes: [...rowNotes, 'Of several rows on one day the lowest in the table counts.'],
  examples: [
    { formula: '=TRAIN.LAST({46020;46001;46010}, {150;140;155}, 46015)', gives: 155 },
    { formula: '=TRAIN.LAST({46001;46001}, {140;142}, 46001)', gives: 142, says: 'two rows on one day' },
    { formula: '=TRAIN.LAST({46001;46010}, {140;155}, 46000)', gives: '#N/A', says: 'nothing yet' },
  ],
  seeAlso: ['TRAIN.SINCE', 'TRAIN.BEST'],
  typical: [columnRange(46001, 46010, 46020), columnRange(140, 155, 150), 46015],
  clash: (_dates, _values, _on, names, name) => whoClash(names, name),
  compute: (dates, values, on, names, name) => {
    const series = rowsOf(dates, values, names, name);
    if (isIssue(series)) return series;
    const place = lastPlace(series.rowDays, dayOf(on));
    return place < 0 ? nothing(`up to ${dayText(dayOf(on))}`, name) : series.rowValues[place]!;
  },
});
