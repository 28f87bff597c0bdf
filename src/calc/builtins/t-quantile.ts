import { isIssue } from '../../../functions/core/issue.ts';
import type { Outcome } from '../../../functions/core/value.ts';
import { tQuantile } from '../../../functions/statistics/distributions.ts';
import type { Builtin } from './builtin.ts';
import { numberOf, problem } from './reading.ts';

/**
 * OpenFormula, statistical functions, TINV, and ISO/IEC 29500 T.INV: Student's t at a probability. The cell engine's own
 * are off by 5e-8, which shows in an interval.
 */
const tInverse = (name: string, sides: 1 | 2): Builtin => ({
  name,
  minArgs: 2,
  maxArgs: 2,
  parameters: 'probability, degrees_of_freedom',
  about:
    sides === 2
      ? 'Value of Student’s t that both tails together pass with a probability.'
      : 'Value of Student’s t below which a share lies.',
  compute([given, of]): Outcome {
    const p = numberOf(name, given);
    if (isIssue(p)) return p;
    const freedom = numberOf(name, of);
    if (isIssue(freedom)) return freedom;
    const df = Math.trunc(freedom);
    if (p <= 0 || df < 1) return problem(name, '#NUM!', 'Value too small.');
    if (sides === 2 ? p > 1 : p >= 1) return problem(name, '#NUM!', 'Value too large.');
    return tQuantile(sides === 2 ? 1 - p / 2 : p, df);
  },
});

export const tQuantiles = [tInverse('T.INV', 1), tInverse('T.INV.2T', 2), tInverse('TINV', 2)];
