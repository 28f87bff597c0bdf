import { defineFunction } from '../core/define.ts';
import { type Issue, isIssue, issue } from '../core/issue.ts';
import { assumption, published } from '../core/source.ts';
import { columnRange, type Range } from '../core/value.ts';
import { ratioCautions, ratioSources } from '../log/caution.ts';
import { dayOf, dayText } from '../log/day.ts';
import {
  acute,
  athlete,
  athletes,
  chronic,
  dates,
  logNotes,
  on,
  rowsOf,
  tooShort,
  values,
  who,
  whoClash,
  windowsClash,
} from '../log/request.ts';
import { weightedMean } from '../log/window.ts';

/** The two weighted means, or why there is none. */
function levels(
  dates: Range,
  values: Range,
  on: number,
  acute: number,
  chronic: number,
  names: Range | undefined,
  name: string | undefined,
): { readonly acute: number; readonly chronic: number } | Issue {
  const clash = windowsClash(acute, chronic);
  if (clash) return clash;
  const series = rowsOf(dates, values, names, name);
  if (isIssue(series)) return series;
  const end = dayOf(on);
  return (
    tooShort(series, end - chronic + 1, name) ?? {
      acute: weightedMean(series, end, acute),
      chronic: weightedMean(series, end, chronic),
    }
  );
}

/** TRAIN.EWMA.RATIO(dates, values, on, [acute=7], [chronic=28], [athletes], [athlete]): a plain number. @throws nothing; a log that does not reach back #N/A. */
export default defineFunction({
  name: 'TRAIN.EWMA.RATIO',
  family: 'training log',
  summary: 'Ratio of recent to earlier load from two exponentially weighted means.',
  searchWords: ['acute:chronic workload ratio', 'EWMA', 'ACWR', 'workload ratio'],
  parameters: [dates, values, on, acute, chronic, athletes, athlete],
  result: { is: 'number', unit: '', about: 'recent level over earlier level' },
  rule: 'TRAIN.EWMA with λ = 2/(acute + 1), over TRAIN.EWMA with λ = 2/(chronic + 1)',
  sources: [
    published('Williams et al. 2017, Br J Sports Med 51:209–210'),
    assumption('The seed is the load of the first logged day; the source leaves it open'),
    ...ratioSources,
  ],
  cautions: ratioCautions,
  notes: [
    ...logNotes,
    'The result is #N/A until the log reaches back over the whole long window; both means start with the first logged day.',
  ],
  examples: [
    {
      formula: '=TRAIN.EWMA.RATIO({46001;46002;46003}, {100;100;200}, 46003, 1, 3)',
      gives: 1.3333,
      says: '200 over 150',
    },
    {
      formula: '=TRAIN.EWMA.RATIO({46001;46002;46003}, {100;100;100}, 46003, 2, 3)',
      gives: 1,
      says: 'a steady load',
    },
  ],
  seeAlso: ['TRAIN.ACWR', 'TRAIN.EWMA'],
  typical: [columnRange(45990, 46010, 46014, 46016), columnRange(300, 300, 400, 500), 46017, 7, 28],
  clash: (_dates, _values, _on, _acute, _chronic, names, name) => whoClash(names, name),
  compute: (dates, values, on, acute, chronic, names, name) => {
    const found = levels(dates, values, on, acute, chronic, names, name);
    if (isIssue(found)) return found;
    if (found.chronic !== 0) return found.acute / found.chronic;
    return issue('#DIV/0!', 'no-earlier-load', {
      parameter: 'values',
      details: { on: dayText(dayOf(on)), ...who(name) },
    });
  },
  steps: (dates, values, on, acute, chronic, names, name) => {
    const found = levels(dates, values, on, acute, chronic, names, name);
    if (isIssue(found)) return [];
    return [
      { name: 'recent level', rule: `λ = 2/(${acute} + 1)`, value: found.acute, unit: '' },
      { name: 'earlier level', rule: `λ = 2/(${chronic} + 1)`, value: found.chronic, unit: '' },
      { name: 'ratio', value: found.acute / found.chronic, unit: '' },
    ];
  },
});
