import type { Step } from '../core/define.ts';
import { type Issue, isIssue } from '../core/issue.ts';
import { optionOr, range } from '../core/parameter.ts';
import { published } from '../core/source.ts';
import type { Range } from '../core/value.ts';
import { completeRows } from './columns.ts';
import { noSpread, tooFew } from './few.ts';
import { type IccForm, icc, iccForms, iccLimits, leftOver, type MeanSquares, meanSquares } from './icc.ts';
import { once } from './memo.ts';

export const iccRange = range('range', 'number', '', 'a row for each subject, a column for each trial');
export const iccForm = optionOr('2,1', 'form', iccForms, 'model and unit: see the notes');

export const iccSources = [
  published('Shrout & Fleiss 1979, Psychol Bull 86:420–428'),
  published('McGraw & Wong 1996, Psychol Methods 1:30–46, with their correction (intervals)'),
];

export const iccRule = [
  'n subjects, k trials; BMS between subjects, JMS between trials, EMS residual, WMS within subjects',
  '1,1: (BMS − WMS)/(BMS + (k − 1) WMS)',
  '2,1: (BMS − EMS)/(BMS + (k − 1) EMS + k (JMS − EMS)/n)',
  '3,1: (BMS − EMS)/(BMS + (k − 1) EMS)',
  '1,k: (BMS − WMS)/BMS',
  '2,k: (BMS − EMS)/(BMS + (JMS − EMS)/n)',
  '3,k: (BMS − EMS)/BMS',
].join('\n');

export const iccNotes: readonly string[] = [
  'Forms 1: trials of a subject in no particular order. Forms 2: the same trials or raters for all, a shift between them counts as error. Forms 3: the same, but a shift common to all does not count.',
  'The second sign says what is reliable: 1 a single trial, k the mean of all trials.',
  'Rows with a blank are left out. At least 2 subjects and 2 trials are needed.',
  'Trials that agree perfectly (for forms 3 also trials that differ by a constant) give 1, and 1 for both limits.',
  'With very few subjects a limit of form 2,k can fall below anything that means something: it is then #NUM!.',
  'A negative value means that trials of one subject differ more than subjects do.',
];

export const iccCautions: readonly string[] = [
  'An ICC grows with the spread among the subjects: the same test looks better in a mixed group. Give TEST.SEM beside it, and name the form.',
];

const squaresOf = once((rows: Range) => meanSquares(completeRows(rows)));

/** Mean squares of a block, or why there are none. */
export function squaresIn(rows: Range, form: IccForm): MeanSquares | Issue {
  const complete = completeRows(rows);
  if (rows.columns < 2) return tooFew('range', rows.columns, 2, 'trial column');
  if (complete.length < 2) return tooFew('range', complete.length, 2, 'complete row');
  const squares = squaresOf(rows);
  return leftOver(form, squares) === 0 && squares.bms === 0 ? noSpread('range') : squares;
}

export function iccSteps(rows: Range, form: IccForm, confidence: number): readonly Step[] {
  const m = squaresIn(rows, form);
  if (isIssue(m)) return [];
  const error = form[0] === '1' ? m.wms : m.ems;
  const [low, high] = iccLimits(form, m, confidence);
  return [
    { name: 'subjects with all trials', symbol: 'n', value: m.n, unit: '' },
    { name: 'trials', symbol: 'k', value: m.k, unit: '' },
    { name: 'mean square between subjects', symbol: 'BMS', value: m.bms, unit: '' },
    { name: 'mean square between trials', symbol: 'JMS', value: m.jms, unit: '' },
    { name: 'residual mean square', symbol: 'EMS', value: m.ems, unit: '' },
    { name: 'mean square within subjects', symbol: 'WMS', value: m.wms, unit: '' },
    ...(error > 0
      ? [
          {
            name: 'ratio of mean squares',
            symbol: 'F',
            rule: form[0] === '1' ? 'BMS / WMS' : 'BMS / EMS',
            value: m.bms / error,
            unit: '',
          } as const,
        ]
      : []),
    { name: `ICC(${form})`, value: icc(form, m), unit: '' },
    { name: `${confidence * 100} % interval`, value: `${low.toFixed(3)} to ${high.toFixed(3)}`, unit: '' },
  ];
}
