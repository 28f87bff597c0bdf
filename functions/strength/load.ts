import { defineFunction } from '../core/define.ts';
import { isIssue } from '../core/issue.ts';
import {
  loadParameter,
  methodParameter,
  repetitionsToFailure,
  repsParameter,
  rirParameter,
} from '../tables/lifting.ts';
import {
  equationConstants,
  equationRule,
  equationSources,
  maximumFactor,
  repetitionCautions,
} from '../tables/repetitions.ts';

/** STRENGTH.LOAD(max, reps, [method="epley"], [rir=0]): load for a set, kg; the inverse of STRENGTH.MAX. @throws nothing; reps + rir above 36 gives #NUM!. */
export default defineFunction({
  name: 'STRENGTH.LOAD',
  family: 'strength',
  summary: 'Load for a set, from the 1RM, the repetitions and the repetitions in reserve.',
  searchWords: ['percent of 1RM', '%1RM', 'working weight', 'prescription', 'RIR', 'training max'],
  parameters: [loadParameter('max', 'one-repetition maximum'), repsParameter, methodParameter, rirParameter],
  result: { is: 'number', unit: 'kg', about: 'load of the set' },
  rule: `load = max / (maximum that 1 kg would give)\n${equationRule}`,
  sources: equationSources,
  constants: equationConstants,
  cautions: repetitionCautions,
  notes: [
    'With a max of 100 the result reads as per cent of the maximum.',
    'STRENGTH.LOADABLE turns the result into a weight that your plates can make.',
    'reps + rir must come to 1 to 36.',
  ],
  examples: [
    { formula: '=STRENGTH.LOAD(154, 3)', gives: 140 },
    {
      formula: '=STRENGTH.LOAD(100, 5, "brzycki", 2)',
      gives: 83.3333,
      says: '30/36, per cent of the maximum',
    },
    { formula: '=STRENGTH.LOAD(100, 5, "epley", 2)', gives: 81.0811, says: '100/(1 + 7/30)' },
  ],
  seeAlso: ['STRENGTH.MAX', 'STRENGTH.REPS', 'STRENGTH.LOADABLE'],
  typical: [160, 5, 'epley', 1],
  directions: { max: 1, reps: -1, rir: -1 },
  compute: (max, reps, method, rir) => {
    const n = repetitionsToFailure(reps, rir);
    return isIssue(n) ? n : max / maximumFactor(method, n);
  },
  steps: (max, reps, method, rir) => {
    const n = repetitionsToFailure(reps, rir);
    if (isIssue(n)) return [];
    return [
      { name: 'repetitions to failure', symbol: 'n', rule: 'reps + rir', value: n, unit: 'reps' },
      { name: 'maximum for each kilogram', rule: method, value: maximumFactor(method, n), unit: '' },
      { name: 'load', rule: 'max / that', value: max / maximumFactor(method, n), unit: 'kg' },
    ];
  },
});
