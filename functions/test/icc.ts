import { defineFunction } from '../core/define.ts';
import { isIssue } from '../core/issue.ts';
import { rangeOf } from '../core/value.ts';
import { icc } from '../statistics/icc.ts';
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

/** TEST.ICC(range, [form="2,1"]): intraclass correlation, at most 1. @throws nothing; too few rows or trials #N/A, all equal #DIV/0!. */
export default defineFunction({
  name: 'TEST.ICC',
  family: 'reliability',
  summary: 'Intraclass correlation: how well repeated trials tell subjects apart.',
  searchWords: ['reliability', 'test-retest', 'intraclass correlation coefficient', 'rater agreement'],
  parameters: [iccRange, iccForm],
  result: { is: 'number', unit: '', about: 'intraclass correlation of the form' },
  rule: iccRule,
  sources: iccSources,
  cautions: iccCautions,
  notes: iccNotes,
  examples: [
    {
      formula: '=TEST.ICC({9,2,5,8;6,1,3,2;8,4,6,8;7,1,2,6;10,5,6,9;6,2,4,7})',
      gives: 0.29,
      says: 'the table of Shrout & Fleiss',
    },
    { formula: '=TEST.ICC({9,2,5,8;6,1,3,2;8,4,6,8;7,1,2,6;10,5,6,9;6,2,4,7}, "3,1")', gives: 0.71 },
    { formula: '=TEST.ICC({9,2,5,8;6,1,3,2;8,4,6,8;7,1,2,6;10,5,6,9;6,2,4,7}, "1,k")', gives: 0.44 },
    { formula: '=TEST.ICC({40,40;42,42;45,45})', gives: 1, says: 'identical trials' },
  ],
  seeAlso: ['TEST.ICC.LOW', 'TEST.ICC.HIGH', 'TEST.SEM', 'TEST.MDC'],
  typical: [rangeOf(4, 2, [38, 39, 41, 40, 45, 46, 36, 36]), '2,1'],
  compute: (range, form) => {
    const squares = squaresIn(range, form);
    return isIssue(squares) ? squares : icc(form, squares);
  },
  steps: (range, form) => iccSteps(range, form, 0.95),
});
