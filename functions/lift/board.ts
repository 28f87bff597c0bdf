import { defineFunction } from '../core/define.ts';
import { issue } from '../core/issue.ts';
import { number } from '../core/parameter.ts';
import { definition } from '../core/source.ts';
import { asin } from '../posture/angle.ts';
import { step } from '../posture/steps.ts';
import * as say from '../tables/sources.ts';

/** LIFT.BOARD(rise, length): deg of a wedge. @throws nothing; a length below the rise #NUM!. */
export default defineFunction({
  name: 'LIFT.BOARD',
  family: 'lift',
  summary: 'Angle of a wedge or slant board from its rise and its length.',
  searchWords: ['slant board', 'wedge', 'ramp', 'incline', 'squat wedge'],
  parameters: [
    number('rise', 'cm', 'how much higher its high edge is', {
      bounds: { min: 0, max: 30, because: 'No wedge to squat on is higher.' },
    }),
    number('length', 'cm', 'along its slope', {
      bounds: { above: 0, max: 100, because: 'No wedge to squat on is longer.' },
    }),
  ],
  result: { is: 'number', unit: 'deg', about: 'angle of the wedge to the floor' },
  rule: 'asin(rise / length)',
  sources: [definition('sine of a right triangle, the slope its hypotenuse')],
  cautions: [
    say.liftCaution,
    'A wedge must be firm, non-slip and support the whole heel; change one thing at a time and stop if the knee hurts.',
  ],
  notes: ['Measure the length along the slope, not along the floor.'],
  examples: [
    { formula: '=LIFT.BOARD(5, 30)', gives: 9.59407 },
    { formula: '=LIFT.BOARD(10, 20)', gives: 30 },
  ],
  seeAlso: ['LIFT.STACK', 'LIFT.FROM.PITCH', 'LIFT.NET'],
  typical: [5, 30],
  directions: { rise: 1, length: -1 },
  compute: (rise, length) =>
    length < rise
      ? issue('#NUM!', 'board-too-short', {
          parameter: 'length',
          received: length,
          unit: 'cm',
          details: { rise },
        })
      : asin(rise / length),
  steps: (rise, length) => [
    step('Angle of the wedge', '', 'asin(rise / length)', asin(rise / length), 'deg'),
  ],
});
