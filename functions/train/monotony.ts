import { defineFunction } from '../core/define.ts';
import { isIssue } from '../core/issue.ts';
import { optionOr } from '../core/parameter.ts';
import { published } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { monotonyOf } from '../log/monotony.ts';
import { athlete, athletes, dates, days, logNotes, on, values, whoClash } from '../log/request.ts';

/** TRAIN.MONOTONY(dates, values, on, [days=7], [athletes], [athlete], [sd="sample"]): mean over SD of daily values. @throws nothing; equal days #DIV/0!, one day or a window before the log #N/A. */
export default defineFunction({
  name: 'TRAIN.MONOTONY',
  family: 'training log',
  summary: 'Training monotony: mean of the daily loads over their standard deviation.',
  searchWords: ['Foster', 'variation of load', 'sameness', 'weekly load'],
  parameters: [
    dates,
    values,
    on,
    days,
    athletes,
    athlete,
    optionOr('sample', 'sd', ['sample', 'population'], 'divisor of the SD: days − 1, or days'),
  ],
  result: { is: 'number', unit: '', about: 'mean / SD of the daily loads' },
  rule: 'mean of the daily loads / SD of the daily loads, over (on − days, on]',
  sources: [published('Foster 1998, Med Sci Sports Exerc 30:1164–1168')],
  notes: [
    ...logNotes,
    'The source does not state the divisor of the SD. "sample" (days − 1) and "population" (days) differ by 8 % in a week: compare only like with like.',
    'Equal loads on all days give #DIV/0!: there is no spread to divide by.',
    'One day, or a window that starts before the first row, gives #N/A.',
  ],
  examples: [
    {
      formula: '=TRAIN.MONOTONY({46027;46028;46030;46031;46032;46033}, {360;540;480;300;720;0}, 46033)',
      gives: 1.2702146977,
      says: 'a week with two days off',
    },
    {
      formula:
        '=TRAIN.MONOTONY({46027;46028;46030;46031;46032;46033}, {360;540;480;300;720;0}, 46033, 7, , , "population")',
      gives: 1.3719886811,
    },
    { formula: '=TRAIN.MONOTONY({46027;46028}, {300;300}, 46028, 2)', gives: '#DIV/0!', says: 'equal days' },
  ],
  seeAlso: ['TRAIN.STRAIN', 'TRAIN.MEAN', 'TRAIN.SESSION'],
  typical: [
    columnRange(46027, 46028, 46030, 46031, 46032),
    columnRange(360, 540, 480, 300, 720),
    46033,
    7,
    undefined,
    undefined,
    'sample',
  ],
  clash: (_dates, _values, _on, _days, names, name) => whoClash(names, name),
  compute: (dates, values, on, days, names, name, sd) => {
    const found = monotonyOf(dates, values, on, days, names, name, sd);
    return isIssue(found) ? found : found.monotony;
  },
  steps: (dates, values, on, days, names, name, sd) => {
    const found = monotonyOf(dates, values, on, days, names, name, sd);
    if (isIssue(found)) return [];
    return [
      { name: 'load of the window', value: found.total, unit: '' },
      { name: 'mean per day', rule: `load / ${days}`, value: found.mean, unit: '' },
      { name: `SD of the days (${sd})`, value: found.sd, unit: '' },
      { name: 'monotony', rule: 'mean / SD', value: found.monotony, unit: '' },
    ];
  },
});
