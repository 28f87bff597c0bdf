import { defineFunction } from '../core/define.ts';
import { number } from '../core/parameter.ts';
import { published } from '../core/source.ts';
import { zOf } from '../statistics/distributions.ts';
import { confidence } from '../statistics/parameters.ts';

/** TEST.CHANGE(before, after, sem, [confidence=.95]): "up", "down" or "within error". @throws nothing. */
export default defineFunction({
  name: 'TEST.CHANGE',
  family: 'reliability',
  summary: 'Whether a measurement changed by more than its error.',
  searchWords: ['real change', 'responder', 'minimal detectable change', 'improvement'],
  parameters: [
    number('before', '', 'first measurement'),
    number('after', '', 'second measurement'),
    number('sem', '', 'standard error of measurement', {
      bounds: { min: 0, because: 'A standard error is not negative.' },
    }),
    confidence,
  ],
  result: {
    is: 'text',
    unit: '',
    about: 'direction of the change',
    oneOf: ['up', 'down', 'within error'],
    measures: { same: [0, 1, 2] },
  },
  rule: 'up when after − before > TEST.MDC(sem, confidence), down when below −TEST.MDC, else within error',
  sources: [published('Weir 2005, J Strength Cond Res 19:231–240')],
  cautions: [
    'More than the error of the measurement is not yet a change that matters, nor one that training made.',
  ],
  notes: ['A change of exactly the minimal detectable change is still within error.'],
  examples: [
    { formula: '=TEST.CHANGE(36, 41, 1.3)', gives: 'up', says: '5 against 3.6' },
    { formula: '=TEST.CHANGE(41, 36, 1.3)', gives: 'down' },
    { formula: '=TEST.CHANGE(36, 39, 1.3)', gives: 'within error' },
  ],
  seeAlso: ['TEST.MDC', 'TEST.SWC', 'TEST.SEM.TRIALS'],
  typical: [36, 41, 1.3, 0.95],
  compute: (before, after, sem, confidence) => {
    const mdc = zOf(confidence) * Math.SQRT2 * sem;
    const change = after - before;
    // Exactly at the limit counts as error, whatever the last bit of the subtraction says.
    const rounding = 1e-12 * Math.max(Math.abs(before), Math.abs(after), mdc);
    if (Math.abs(change) - mdc <= rounding) return 'within error';
    return change > 0 ? 'up' : 'down';
  },
  steps: (before, after, sem, confidence) => [
    { name: 'change', rule: 'after − before', value: after - before, unit: '' },
    {
      name: 'minimal detectable change',
      rule: 'z · √2 · sem',
      value: zOf(confidence) * Math.SQRT2 * sem,
      unit: '',
    },
  ],
});
