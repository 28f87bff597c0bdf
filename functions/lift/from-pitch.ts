import { defineFunction } from '../core/define.ts';
import { sin } from '../posture/angle.ts';
import { leverOf } from '../posture/leg.ts';
import { step } from '../posture/steps.ts';
import { ballAlongFoot } from '../tables/foot.ts';
import { foot, pitch } from '../tables/parameters.ts';
import * as say from '../tables/sources.ts';

/** LIFT.FROM.PITCH(pitch, foot): cm. @throws nothing. */
export default defineFunction({
  name: 'LIFT.FROM.PITCH',
  family: 'lift',
  summary: 'Heel lift that gives a pitch of the sole.',
  searchWords: ['wedge height', 'slant board', 'ramp angle', 'shoe'],
  parameters: [pitch(), foot()],
  result: { is: 'number', unit: 'cm', about: 'heel above the ball of the foot' },
  rule: '.740 foot × sin pitch',
  sources: [say.linkGeometry],
  constants: [ballAlongFoot],
  cautions: [say.liftCaution],
  notes: [
    'The inverse of LIFT.PITCH. A slant board of that pitch raises the heel over the ball by the same.',
  ],
  examples: [
    { formula: '=LIFT.FROM.PITCH(5, 27)', gives: 1.74137 },
    { formula: '=LIFT.FROM.PITCH(3.5, 27.118)', gives: 1.22508 },
  ],
  seeAlso: ['LIFT.PITCH', 'LIFT.NET'],
  typical: [5, 27],
  directions: { pitch: 1, foot: 1 },
  compute: (pitch, foot) => leverOf(foot) * sin(pitch),
  steps: (pitch, foot) => [
    step('Heel to ball', 'b', '.740 L', leverOf(foot), 'cm', [ballAlongFoot]),
    step('Heel lift', 'h', 'b sinφ', leverOf(foot) * sin(pitch), 'cm'),
  ],
});
