import { defineFunction } from '../core/define.ts';
import { isIssue } from '../core/issue.ts';
import { definition } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { dayOf, dayText } from '../log/day.ts';
import { between } from '../log/log.ts';
import {
  athlete,
  athletes,
  dates,
  from,
  nothing,
  rowNotes,
  rowsOf,
  spanClash,
  to,
  values,
  whoClash,
} from '../log/request.ts';

/** TRAIN.BEST(dates, values, from, to, [athletes], [athlete]): largest value. @throws nothing; no row in the span #N/A, from after to #NUM!. */
export default defineFunction({
  name: 'TRAIN.BEST',
  family: 'training log',
  summary: 'Largest value of the log between two days.',
  searchWords: ['personal best', 'PB', 'record', 'maximum', 'season best'],
  parameters: [dates, values, from, to, athletes, athlete],
  result: { is: 'number', unit: '', about: 'the largest value, in its unit', measures: { same: [1] } },
  rule: 'max of values with from ≤ date ≤ to',
  sources: [definition('the largest of the rows')],
  notes: [...rowNotes, 'Both days count. No row between them gives #N/A.'],
  examples: [
    { formula: '=TRAIN.BEST({46001;46010;46020}, {140;155;150}, 46001, 46031)', gives: 155 },
    { formula: '=TRAIN.BEST({46001;46010;46020}, {140;155;150}, 46011, 46031)', gives: 150 },
  ],
  seeAlso: ['TRAIN.LAST', 'TRAIN.TREND'],
  typical: [columnRange(46001, 46010, 46020), columnRange(140, 155, 150), 46001, 46031],
  clash: (_dates, _values, _from, _to, names, name) => whoClash(names, name),
  compute: (dates, values, from, to, names, name) => {
    const [first, last] = [dayOf(from), dayOf(to)];
    const clash = spanClash(first, last);
    if (clash) return clash;
    const series = rowsOf(dates, values, names, name);
    if (isIssue(series)) return series;
    const [start, end] = between(series.rowDays, first, last);
    if (start === end) return nothing(`from ${dayText(first)} to ${dayText(last)}`, name);
    let best = Number.NEGATIVE_INFINITY;
    for (let i = start; i < end; i++) best = Math.max(best, series.rowValues[i]!);
    return best;
  },
});
