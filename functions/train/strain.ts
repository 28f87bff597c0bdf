import { defineFunction } from '../core/define.ts';
import { isIssue } from '../core/issue.ts';
import { optionOr } from '../core/parameter.ts';
import { published } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { monotonyOf } from '../log/monotony.ts';
import { athlete, athletes, dates, days, logNotes, on, values, whoClash } from '../log/request.ts';

/** TRAIN.STRAIN(dates, values, on, [days=7], [athletes], [athlete], [sd="sample"]): load × monotony. @throws nothing; as TRAIN.MONOTONY. */
export default defineFunction({
  name: 'TRAIN.STRAIN',
  family: 'training log',
  summary: 'Training strain: load of the window times its monotony.',
  searchWords: ['Foster', 'weekly strain', 'monotony'],
  parameters: [
    dates,
    values,
    on,
    days,
    athletes,
    athlete,
    optionOr('sample', 'sd', ['sample', 'population'], 'divisor of the SD: days − 1, or days'),
  ],
  result: {
    is: 'number',
    unit: '',
    about: 'load × monotony, in the unit of the values',
    measures: { same: [1] },
  },
  rule: 'sum over (on − days, on] × TRAIN.MONOTONY',
  sources: [published('Foster 1998, Med Sci Sports Exerc 30:1164–1168')],
  notes: [
    ...logNotes,
    'The source does not state the divisor of the SD: "sample" (days − 1) or "population" (days).',
    'Equal loads on all days give #DIV/0!; one day, or a window that starts before the first row, #N/A.',
  ],
  examples: [
    {
      formula: '=TRAIN.STRAIN({46027;46028;46030;46031;46032;46033}, {360;540;480;300;720;0}, 46033)',
      gives: 3048.5152743838,
      says: '2400 × 1.2702',
    },
    {
      formula:
        '=TRAIN.STRAIN({46027;46028;46030;46031;46032;46033}, {360;540;480;300;720;0}, 46033, 7, , , "population")',
      gives: 3292.7728347362,
    },
  ],
  seeAlso: ['TRAIN.MONOTONY', 'TRAIN.SUM'],
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
    return isIssue(found) ? found : found.total * found.monotony;
  },
  steps: (dates, values, on, days, names, name, sd) => {
    const found = monotonyOf(dates, values, on, days, names, name, sd);
    if (isIssue(found)) return [];
    return [
      { name: 'load of the window', value: found.total, unit: '' },
      { name: 'monotony', rule: 'mean / SD of the days', value: found.monotony, unit: '' },
      { name: 'strain', rule: 'load × monotony', value: found.total * found.monotony, unit: '' },
    ];
  },
});
