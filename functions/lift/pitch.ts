import { defineFunction } from '../core/define.ts';
import { published } from '../core/source.ts';
import { pitchOf } from '../posture/leg.ts';
import { pitchSteps } from '../posture/steps.ts';
import { liftTooHigh } from '../posture/why.ts';
import { ballAlongFoot } from '../tables/foot.ts';
import { foot, lift } from '../tables/parameters.ts';
import * as say from '../tables/sources.ts';

/** LIFT.PITCH(lift, foot): deg. @throws nothing; a lift that reaches the ball gives #NUM!. */
export default defineFunction({
  name: 'LIFT.PITCH',
  family: 'lift',
  summary: 'Angle of the sole to the floor under a heel lift.',
  searchWords: ['heel drop', 'wedge angle', 'shoe', 'ramp'],
  parameters: [lift(), foot()],
  result: { is: 'number', unit: 'deg', about: 'pitch of the sole, heel up' },
  rule: 'asin(lift / (.740 foot))',
  sources: [
    say.linkGeometry,
    published('Sato 2012, JSCR 26:28–33: 3.5° between shoe types'),
    published(
      'Monteiro 2022, Hum Mov 23:97–103: remarks on shoes of 13 mm, which is 3.7° on the survey’s mean man’s foot',
    ),
  ],
  constants: [ballAlongFoot],
  cautions: [say.liftCaution],
  notes: [
    'The heel lift is under the heel only; the foot is rigid from heel to ball and turns about the ball.',
  ],
  examples: [
    { formula: '=LIFT.PITCH(2, 27)', gives: 5.74493 },
    {
      formula: '=LIFT.PITCH(1.3, 27.118)',
      gives: 3.71433,
      says: 'a drop of 13 mm on the survey’s mean man’s foot',
    },
  ],
  seeAlso: ['LIFT.FROM.PITCH', 'LIFT.NET', 'LIFT.CHANGE'],
  typical: [2, 27],
  directions: { lift: 1, foot: -1 },
  compute: (lift, foot) => {
    const pitch = pitchOf(lift, foot);
    return Number.isNaN(pitch) ? liftTooHigh(lift, foot)! : pitch;
  },
  steps: pitchSteps,
});
