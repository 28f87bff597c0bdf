import { defineFunction } from '../core/define.ts';
import { number } from '../core/parameter.ts';
import { definition } from '../core/source.ts';
import * as say from '../tables/sources.ts';

const bounds = { min: 0, because: 'A sole is no thinner than nothing.' };

/** LIFT.NET(heel_stack, forefoot_stack): cm. @throws nothing; negative when the forefoot stands higher. */
export default defineFunction({
  name: 'LIFT.NET',
  family: 'lift',
  summary: 'Net height of a shoe or board: what is under the heel less what is under the ball.',
  searchWords: ['drop', 'heel drop', 'stack height', 'shoe', 'effective heel'],
  parameters: [
    number('heel_stack', 'cm', 'thickness under the heel', { bounds }),
    number('forefoot_stack', 'cm', 'thickness under the ball of the foot', { bounds }),
  ],
  result: { is: 'number', unit: 'cm', about: 'heel above the ball of the foot' },
  rule: 'heel_stack − forefoot_stack',
  sources: [definition('difference of two thicknesses')],
  cautions: [say.liftCaution],
  notes: [
    'A soft sole is thinner under load. Only the difference turns the foot: a thick flat sole lifts nothing.',
  ],
  examples: [
    { formula: '=LIFT.NET(3.1, 1.2)', gives: 1.9 },
    { formula: '=LIFT.NET(1, 1)', gives: 0, says: 'a flat sole' },
  ],
  seeAlso: ['LIFT.PITCH', 'LIFT.CHANGE', 'MM'],
  typical: [3, 1],
  directions: { heel_stack: 1, forefoot_stack: -1 },
  compute: (heelStack, forefootStack) => heelStack - forefootStack,
});
