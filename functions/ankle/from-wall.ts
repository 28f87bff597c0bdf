import { defineFunction } from '../core/define.ts';
import { issue } from '../core/issue.ts';
import { number } from '../core/parameter.ts';
import { definition, published } from '../core/source.ts';
import { asin } from '../posture/angle.ts';
import { step } from '../posture/steps.ts';
import { kneeAheadAtWall, wallConstants, wallFootSteps } from '../posture/wall.ts';
import { footMaybe, tibia } from '../tables/parameters.ts';
import * as say from '../tables/sources.ts';

/** ANKLE.FROM.WALL: weight-bearing ankle range, deg. @throws nothing; a result outside −10 to 70 gives #NUM!. */
export default defineFunction({
  name: 'ANKLE.FROM.WALL',
  family: 'ankle',
  summary: 'Ankle range by the knee-to-wall test: weight-bearing, from the distance.',
  searchWords: [
    'knee to wall',
    'lunge test',
    'dorsiflexion',
    'mobility',
    'toe distance',
    'knee to wall test',
    'ankle range',
    'stiff ankle',
    'ankle mobility',
  ],
  parameters: [
    number('distance', 'cm', 'longest toe to the wall, knee touching it, heel down', {
      bounds: { min: -10, max: 40, because: 'Minus: the knee stays behind the toe tip.' },
    }),
    tibia(),
    footMaybe('.152/.246 of the tibia'),
  ],
  result: { is: 'number', unit: 'deg', about: 'tibia from the vertical' },
  rule: 'asin((distance + .75 foot − 5) / tibia)',
  sources: [
    definition('plane geometry of the test: ankle joint, knee and wall'),
    published(
      'Calatayud 2015, IJSPT 10:197–202: 11.7 cm and 40.6° (SD 5.2), where this gives 40.2° for the survey’s mean man',
    ),
  ],
  constants: wallConstants,
  cautions: [say.modelCaution, say.painCaution],
  notes: [
    'No fixed number of degrees per centimetre is used: the often quoted 3.6° per cm is about twice what geometry gives (1.6 to 2.0).',
    'Measure both sides; the function takes one.',
    say.weightBearingNote,
  ],
  examples: [
    {
      formula: '=ANKLE.FROM.WALL(11.7, 41.875, 27.118)',
      gives: 40.2178,
      says: 'the survey’s mean man at 11.7 cm',
    },
    { formula: '=ANKLE.FROM.WALL(9, 41)', gives: 34.1233, says: 'foot not measured' },
  ],
  seeAlso: ['ANKLE.TO.WALL', 'ANKLE.NEEDED', 'LEAN.PARALLEL', 'TEST.SIDES'],
  typical: [10, 41, 26],
  directions: { distance: 1, tibia: -1, foot: 1 },
  compute: (distance, tibia, foot) => {
    const ahead = kneeAheadAtWall(distance, tibia, foot);
    const angle = asin(ahead / tibia);
    if (angle >= -10 && angle <= 70) return angle;
    const arrived = { parameter: 'distance', received: distance, unit: 'cm' } as const;
    return Number.isNaN(angle)
      ? issue('#NUM!', 'wall-too-far', { ...arrived, details: { ahead, tibia } })
      : issue('#NUM!', 'wall-angle-out-of-bounds', { ...arrived, details: { angle } });
  },
  steps: (distance, tibia, foot) => {
    const ahead = kneeAheadAtWall(distance, tibia, foot);
    return [
      ...wallFootSteps(tibia, foot),
      step('Knee ahead of the ankle joint', 'x', 'distance + .75 L − 5', ahead, 'cm', wallConstants),
      step('Ankle range', 'a', 'asin(x / tibia)', asin(ahead / tibia), 'deg'),
    ];
  },
});
