import { defineFunction } from '../core/define.ts';
import { isIssue } from '../core/issue.ts';
import { rangeOf } from '../core/value.ts';
import { iccLimits } from '../statistics/icc.ts';
import {
  iccCautions,
  iccForm,
  iccNotes,
  iccRange,
  iccRule,
  iccSources,
  iccSteps,
  squaresIn,
} from '../statistics/icc-function.ts';
import { confidence } from '../statistics/parameters.ts';

/** TEST.ICC.HIGH(range, [form="2,1"], [confidence=.95]): upper confidence limit. @throws nothing; as TEST.ICC. */
export default defineFunction({
  name: 'TEST.ICC.HIGH',
  family: 'reliability',
  summary: 'Upper confidence limit of an intraclass correlation.',
  searchWords: ['reliability', 'confidence interval', 'intraclass correlation coefficient'],
  parameters: [iccRange, iccForm, confidence],
  result: { is: 'number', unit: '', about: 'upper limit of the interval' },
  rule: `${iccRule}\nlimits: from F quantiles of the ratio of mean squares; for forms 2 with the fractional degrees of freedom of McGraw & Wong`,
  sources: iccSources,
  cautions: iccCautions,
  notes: iccNotes,
  examples: [
    {
      formula: '=TEST.ICC.HIGH({9,2,5,8;6,1,3,2;8,4,6,8;7,1,2,6;10,5,6,9;6,2,4,7})',
      gives: 0.7611,
      says: 'the table of Shrout & Fleiss, form 2,1',
    },
    { formula: '=TEST.ICC.HIGH({9,2,5,8;6,1,3,2;8,4,6,8;7,1,2,6;10,5,6,9;6,2,4,7}, "3,1")', gives: 0.9459 },
    {
      formula: '=TEST.ICC.HIGH({9,2,5,8;6,1,3,2;8,4,6,8;7,1,2,6;10,5,6,9;6,2,4,7}, "1,1", .95)',
      gives: 0.7226,
    },
  ],
  seeAlso: ['TEST.ICC', 'TEST.ICC.LOW'],
  typical: [rangeOf(4, 2, [38, 39, 41, 40, 45, 46, 36, 36]), '2,1', 0.95],
  directions: { confidence: 1 },
  compute: (range, form, confidence) => {
    const squares = squaresIn(range, form);
    return isIssue(squares) ? squares : iccLimits(form, squares, confidence)[1];
  },
  steps: iccSteps,
});
