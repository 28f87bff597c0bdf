import { defineFunction } from '../core/define.ts';
import { type Issue, isIssue, issue } from '../core/issue.ts';
import { yesNoOr } from '../core/parameter.ts';
import { practice, secondary } from '../core/source.ts';
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
import { windowOf } from '../log/window.ts';

interface Loads {
  readonly acute: number;
  readonly chronic: number;
  readonly chronicDays: number;
}

/** Mean per day of the two windows, or why there is none. */
function loads(
  dates: Range,
  values: Range,
  on: number,
  acute: number,
  chronic: number,
  coupled: boolean,
  names: Range | undefined,
  name: string | undefined,
): Loads | Issue {
  const clash = windowsClash(acute, chronic);
  if (clash) return clash;
  const series = rowsOf(dates, values, names, name);
  if (isIssue(series)) return series;
  const end = dayOf(on);
  const short = tooShort(series, end - chronic + 1, name);
  if (short) return short;
  const chronicDays = coupled ? chronic : chronic - acute;
  return {
    acute: windowOf(series, end - acute + 1, end).total / acute,
    chronic: windowOf(series, end - chronic + 1, coupled ? end : end - acute).total / chronicDays,
    chronicDays,
  };
}

/** TRAIN.ACWR(dates, values, on, [acute=7], [chronic=28], [coupled=TRUE], [athletes], [athlete]): a plain number. @throws nothing; a log that does not reach back #N/A, no earlier load #DIV/0!. */
export default defineFunction({
  name: 'TRAIN.ACWR',
  family: 'training log',
  summary: 'Ratio of recent to earlier load: mean per day of a short window over that of a long one.',
  searchWords: ['acute:chronic workload ratio', 'acute chronic', 'workload ratio', 'spike'],
  parameters: [
    dates,
    values,
    on,
    acute,
    chronic,
    yesNoOr(
      true,
      'coupled',
      'TRUE: the long window holds the short one; FALSE: it ends where the short one starts',
    ),
    athletes,
    athlete,
  ],
  result: { is: 'number', unit: '', about: 'recent load over earlier load' },
  rule: 'mean per day over (on − acute, on] / mean per day over (on − chronic, on]; uncoupled: … over (on − chronic, on − acute]',
  sources: [
    secondary('Windt & Gabbett 2019, Br J Sports Med 53:988–990 (coupled and uncoupled)'),
    ...ratioSources,
    practice('Windows of 7 and 28 days'),
  ],
  cautions: ratioCautions,
  notes: [
    ...logNotes,
    'Coupled and uncoupled ratios are two scales: with windows of 7 and 28 days coupled = 4u/(u + 3), u uncoupled.',
    'The result is #N/A until the log reaches back over the whole long window, and #DIV/0! when that window carries no load.',
  ],
  examples: [
    {
      formula: '=TRAIN.ACWR({46001;46002;46003;46004}, {300;300;300;600}, 46004, 1, 4)',
      gives: 1.6,
      says: '600 / 375',
    },
    {
      formula: '=TRAIN.ACWR({46001;46002;46003;46004}, {300;300;300;600}, 46004, 1, 4, FALSE)',
      gives: 2,
      says: '600 / 300',
    },
    { formula: '=TRAIN.ACWR({46001;46002}, {300;600}, 46002)', gives: '#N/A', says: 'the log is too short' },
  ],
  seeAlso: ['TRAIN.EWMA.RATIO', 'TRAIN.SUM', 'TRAIN.MONOTONY'],
  typical: [columnRange(45990, 46010, 46014, 46016), columnRange(300, 300, 400, 500), 46017, 7, 28, true],
  clash: (_dates, _values, _on, _acute, _chronic, _coupled, names, name) => whoClash(names, name),
  compute: (dates, values, on, acute, chronic, coupled, names, name) => {
    const found = loads(dates, values, on, acute, chronic, coupled, names, name);
    if (isIssue(found)) return found;
    if (found.chronic !== 0) return found.acute / found.chronic;
    return issue('#DIV/0!', 'no-earlier-load', {
      parameter: 'values',
      details: { on: dayText(dayOf(on)), ...who(name) },
    });
  },
  steps: (dates, values, on, acute, chronic, coupled, names, name) => {
    const found = loads(dates, values, on, acute, chronic, coupled, names, name);
    if (isIssue(found)) return [];
    return [
      { name: `mean per day of the last ${acute} days`, symbol: 'acute', value: found.acute, unit: '' },
      {
        name: coupled
          ? `mean per day of the last ${chronic} days`
          : `mean per day of the ${found.chronicDays} days before those`,
        symbol: 'chronic',
        value: found.chronic,
        unit: '',
      },
      { name: 'ratio', rule: 'acute / chronic', value: found.acute / found.chronic, unit: '' },
    ];
  },
});
