import { defineFunction, type Step } from '../core/define.ts';
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
  equationNames,
  equationRule,
  equationSources,
  equations,
  maximumFactor,
  repetitionCautions,
} from '../tables/repetitions.ts';

/** STRENGTH.MAX(load, reps, [method="epley"], [rir=0]): estimated one-repetition maximum, kg. @throws nothing; reps + rir above 36 gives #NUM!. */
export default defineFunction({
  name: 'STRENGTH.MAX',
  family: 'strength',
  summary: 'Estimated 1RM from a set: load, repetitions and repetitions in reserve.',
  searchWords: ['1RM', 'one-rep max', 'e1RM', 'Epley', 'Brzycki', 'Wathan', 'Mayhew', 'Lombardi', 'RIR'],
  parameters: [loadParameter('load', 'load of the set'), repsParameter, methodParameter, rirParameter],
  result: { is: 'number', unit: 'kg', about: 'estimated 1RM (one-repetition maximum)' },
  rule: equationRule,
  sources: equationSources,
  constants: equationConstants,
  cautions: repetitionCautions,
  notes: [
    "Epley's own line gives 103.3 % at one repetition; here one repetition with none in reserve is the maximum itself, with every method.",
    'The seven methods differ by several per cent on one set: keep to one of them when you compare.',
    'reps + rir must come to 1 to 36.',
  ],
  examples: [
    { formula: '=STRENGTH.MAX(140, 3)', gives: 154, says: '140 (1 + 3/30)' },
    { formula: '=STRENGTH.MAX(100, 5, "brzycki")', gives: 112.5, says: '100 · 36/32' },
    {
      formula: '=STRENGTH.MAX(140, 5, "epley", 2)',
      gives: 172.67,
      says: 'two in reserve count as seven repetitions',
    },
    { formula: '=STRENGTH.MAX(180, 1)', gives: 180 },
  ],
  seeAlso: ['STRENGTH.LOAD', 'STRENGTH.REPS', 'STRENGTH.RIR', 'STRENGTH.FROM.VELOCITY'],
  typical: [140, 5, 'epley', 1],
  directions: { load: 1, reps: 1, rir: 1 },
  compute: (load, reps, method, rir) => {
    const n = repetitionsToFailure(reps, rir);
    return isIssue(n) ? n : load * maximumFactor(method, n);
  },
  steps: (load, reps, method, rir) => {
    const n = repetitionsToFailure(reps, rir);
    if (isIssue(n)) return [];
    const each = (method === 'mean' ? equationNames : [method]).map(
      (name): Step => ({
        name,
        rule: n === 1 ? 'the load itself at one repetition' : equations[name].rule,
        value: load * maximumFactor(name, n),
        unit: 'kg',
        constants: equations[name].constants,
      }),
    );
    const rough: Step[] =
      n > 10
        ? [{ name: 'above 10 repetitions the equations are a rough guess', value: `n = ${n}`, unit: '' }]
        : [];
    return [
      { name: 'repetitions to failure', symbol: 'n', rule: 'reps + rir', value: n, unit: 'reps' },
      ...rough,
      ...each,
      ...(method === 'mean'
        ? [{ name: 'mean of the seven', value: load * maximumFactor(method, n), unit: 'kg' } as const]
        : []),
    ];
  },
});
