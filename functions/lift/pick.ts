import { defineFunction } from '../core/define.ts';
import { issue } from '../core/issue.ts';
import { range } from '../core/parameter.ts';
import { numbersIn } from '../core/range-numbers.ts';
import { definition } from '../core/source.ts';
import { rangeOf } from '../core/value.ts';
import { lift } from '../tables/parameters.ts';
import * as say from '../tables/sources.ts';

/** LIFT.PICK(lift, range): the smallest height on hand that is enough, cm. @throws nothing; none gives #N/A. */
export default defineFunction({
  name: 'LIFT.PICK',
  family: 'lift',
  summary: 'Smallest available heel height that is at least the heel lift needed.',
  searchWords: [
    'choose wedge',
    'plates under heels',
    'available heights',
    'round up',
    'which heel',
    'available heel heights',
  ],
  parameters: [lift(), range('range', 'number', 'cm', 'the available heights')],
  result: { is: 'number', unit: 'cm', about: 'one of the heights' },
  rule: 'smallest of the heights that are ≥ lift',
  sources: [definition('the next height up')],
  cautions: [say.liftCaution, say.heelAdvice],
  notes: ['Put a 0 among the heights if none at all may be the answer. Blanks are left out.'],
  examples: [
    { formula: '=LIFT.PICK(1.7, {1; 1.5; 2; 2.5})', gives: 2 },
    { formula: '=LIFT.PICK(LIFT.FOR.LEAN(40, 45, 40, 48, 30), {0; 1; 2; 3})', gives: 2 },
    { formula: '=LIFT.PICK(4, {1; 2; 3})', gives: '#N/A', says: 'none is high enough' },
  ],
  seeAlso: ['LIFT.FOR.LEAN', 'LIFT.FOR.DEPTH'],
  typical: [1.7, rangeOf(4, 1, [1, 1.5, 2, 2.5])],
  compute: (lift, heights) => {
    const { values } = numbersIn(heights);
    let best = Number.POSITIVE_INFINITY;
    let highest = Number.NEGATIVE_INFINITY;
    for (const height of values) {
      if (height >= lift && height < best) best = height;
      if (height > highest) highest = height;
    }
    if (best < Number.POSITIVE_INFINITY) return best;
    return values.length === 0
      ? issue('#N/A', 'too-few', {
          parameter: 'range',
          expected: 'at least one height',
          details: { have: 'no number' },
        })
      : issue('#N/A', 'no-lift-on-hand', {
          parameter: 'lift',
          received: lift,
          unit: 'cm',
          details: { highest },
        });
  },
});
