import { defineFunction } from '../core/define.ts';
import { issue } from '../core/issue.ts';
import { divisorLoad, loadParameter, methodParameter } from '../tables/lifting.ts';
import {
  equationConstants,
  equationRule,
  equationSources,
  repetitionCautions,
  repetitionsFor,
} from '../tables/repetitions.ts';

/** STRENGTH.REPS(max, load, [method="epley"]): repetitions to failure, a number ≥ 1, not rounded. @throws nothing; no answer within 36 gives #NUM!. */
export default defineFunction({
  name: 'STRENGTH.REPS',
  family: 'strength',
  summary: 'Repetitions to failure that a load allows, from the one-repetition maximum.',
  searchWords: ['rep max', 'AMRAP', 'how many reps', 'prediction'],
  parameters: [
    divisorLoad('max', 'one-repetition maximum'),
    loadParameter('load', 'load of the set'),
    methodParameter,
  ],
  result: { is: 'number', unit: 'reps', about: 'repetitions to failure, not rounded, never below 1' },
  rule: `the n for which the equation turns load into max; 1 when load is max or more\n${equationRule}`,
  sources: equationSources,
  constants: equationConstants,
  cautions: repetitionCautions,
  notes: [
    'Not rounded: round down for a set that should be completed.',
    'The mean of the seven has no closed inverse and is found by bisection.',
    'A load so light that the equation has no answer within 36 repetitions gives #NUM!.',
  ],
  examples: [
    { formula: '=STRENGTH.REPS(154, 140)', gives: 3, says: '30 (154/140 − 1)' },
    { formula: '=STRENGTH.REPS(112.5, 100, "brzycki")', gives: 5 },
    { formula: '=STRENGTH.REPS(150, 150)', gives: 1 },
    { formula: '=STRENGTH.REPS(150, 20)', gives: '#NUM!', says: 'too light for the equation' },
  ],
  seeAlso: ['STRENGTH.MAX', 'STRENGTH.LOAD', 'STRENGTH.RIR'],
  typical: [160, 130, 'epley'],
  directions: { max: 1, load: -1 },
  compute: (max, load, method) => {
    if (load >= max) return 1;
    const n = repetitionsFor(method, max / load);
    if (n <= 36 * (1 + 1e-12)) return Math.min(36, Math.max(1, n));
    return issue('#NUM!', 'no-reps-answer', { parameter: 'load', received: load, details: { method } });
  },
});
