import { defineFunction } from '../core/define.ts';
import { issue } from '../core/issue.ts';
import { number, optionOr, range } from '../core/parameter.ts';
import { definition } from '../core/source.ts';
import { columnRange, type Range } from '../core/value.ts';
import { dayOf, dayText } from '../log/day.ts';
import { pairsOf } from '../statistics/columns.ts';
import { mean } from '../statistics/describe.ts';
import { tOf } from '../statistics/distributions.ts';
import { allEqual, errorOfEstimate, type Line, lineThrough } from '../statistics/line.ts';
import { onceForTwo } from '../statistics/memo.ts';
import { pairNotes } from '../statistics/parameters.ts';

const words = ['date', 'slope', 'low', 'high'] as const;
const FEWEST_DAYS = 3;
const DAYS_A_WEEK = 7;
/** How far before the first day a target counts as met on it, days: rounding of the fit. */
const ROUNDING = 1e-6;

interface Progress {
  readonly distinctDays: number;
  readonly first: number;
  readonly line: Line;
  readonly meanValue: number;
  /** Change per day and half its 95 % interval. */
  readonly slope: number;
  readonly margin: number;
}

/** The line through a log of tests, fitted once for each pair of columns. */
const progressOf: (dates: Range, values: Range) => Progress = onceForTwo((dates, values) => {
  const { a, b, n } = pairsOf(dates, values);
  const days = a.map(dayOf);
  const distinctDays = new Set(days).size;
  const line = lineThrough({ a: days, b, n });
  const level = allEqual(b);
  return {
    distinctDays,
    first: days.reduce((first, day) => Math.min(first, day), Number.POSITIVE_INFINITY),
    line,
    meanValue: mean(b),
    slope: level ? 0 : line.slope,
    margin:
      level || distinctDays < FEWEST_DAYS
        ? 0
        : (tOf(0.95, n - 2) * errorOfEstimate(line)) / Math.sqrt(line.sxx),
  };
});

/** TEST.REACHED(dates, values, target, [what="date"]): day of the target, or the slope per week and its limits. @throws nothing; too few days or no date #N/A. */
export default defineFunction({
  name: 'TEST.REACHED',
  family: 'reliability',
  summary:
    'When a series of tests reaches a target by its least-squares line, and the slope with its interval.',
  searchWords: ['goal date', 'target', 'trend', 'progress', 'forecast', 'slope per week'],
  parameters: [
    range('dates', 'date', 'date', 'day of each test; a time of day is cut off', { together: 'pairs' }),
    range('values', 'number', '', 'what was measured', { together: 'pairs' }),
    number('target', '', 'the value to reach, in the unit of the values'),
    optionOr('date', 'what', words, 'date; slope per week; "low" and "high" are its 95 % interval'),
  ],
  result: {
    is: 'number',
    unit: '',
    about: 'a date (not rounded), or change per week in the unit of the values',
    measures: {
      word: 3,
      usual: 'date',
      words: { date: 'date' },
      others: { of: 1, per: 'week' },
      alike: [1, 2],
    },
  },
  rule: [
    'date = mean date + (target − mean value) / slope',
    'slope = Σ(d − d̄)(v − v̄)/Σ(d − d̄)², × 7 for a week',
    'low, high: slope ∓ t(.975, n − 2) · see / √Σ(d − d̄)²',
  ].join('\n'),
  sources: [definition('least squares, with Student’s t for the slope')],
  cautions: [
    'A line drawn past its data is a guess: progress slows. Read the date as an order of size.',
    'The line describes the tests. Nothing here says what caused a change.',
  ],
  notes: [
    ...pairNotes,
    'No date where the slope’s interval includes 0, or where the line passed the target before the first test.',
    'A date within the log is an answer. Fewer than three different days give #N/A, whatever is asked.',
    'Give the column a date format to read the serial day as a date.',
  ],
  examples: [
    { formula: '=TEST.REACHED({46001;46008;46015}, {8;9;10}, 12)', gives: 46029 },
    { formula: '=TEST.REACHED({46001;46008;46015}, {8;9;10}, 12, "slope")', gives: 1, says: '1 cm per week' },
    {
      formula: '=TEST.REACHED({46001;46008;46015;46022}, {8;9;8;9}, 12)',
      gives: '#N/A',
      says: 'the slope may as well be 0',
    },
  ],
  seeAlso: ['TRAIN.TREND', 'TEST.CHANGE', 'COHORT.FIT', 'ANKLE.TO.WALL'],
  typical: [columnRange(46001, 46008, 46015, 46022), columnRange(8, 9.1, 9.9, 11), 12],
  compute: (dates, values, target, what) => {
    const { distinctDays, first, line, meanValue, slope, margin } = progressOf(dates, values);
    if (distinctDays < FEWEST_DAYS)
      return issue('#N/A', 'too-few', {
        parameter: 'dates',
        expected: 'tests on 3 or more different days',
        details: {
          have: distinctDays === 0 ? 'no test' : distinctDays === 1 ? 'only one day' : 'only 2 days',
        },
      });
    if (what === 'slope') return DAYS_A_WEEK * slope;
    const [low, high] = [slope - margin, slope + margin];
    if (what === 'low') return DAYS_A_WEEK * low;
    if (what === 'high') return DAYS_A_WEEK * high;
    if (low <= 0 && high >= 0)
      return issue('#N/A', 'no-clear-slope', {
        parameter: 'values',
        details: { low: DAYS_A_WEEK * low, high: DAYS_A_WEEK * high },
      });
    const day = line.meanX + (target - meanValue) / slope;
    if (day < first - ROUNDING)
      return issue('#N/A', 'target-behind', {
        parameter: 'target',
        received: target,
        details: { first: dayText(first), slope: DAYS_A_WEEK * slope },
      });
    return day;
  },
  steps: (dates, values, target) => {
    const { distinctDays, line, slope, margin } = progressOf(dates, values);
    if (distinctDays < FEWEST_DAYS) return [];
    return [
      { name: 'tests', symbol: 'n', value: line.n, unit: '' },
      { name: 'different days', value: distinctDays, unit: '' },
      { name: 'slope per week', value: DAYS_A_WEEK * slope, unit: '' },
      { name: 'half the 95 % interval of the slope per week', value: DAYS_A_WEEK * margin, unit: '' },
      { name: 'target', value: target, unit: '' },
    ];
  },
});
