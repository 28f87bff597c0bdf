import { defineFunction } from '../core/define.ts';
import { definition } from '../core/source.ts';
import { sin } from '../posture/angle.ts';
import { step } from '../posture/steps.ts';
import { wallConstants, wallDistance, wallFootSteps } from '../posture/wall.ts';
import { ankle, footMaybe, tibia } from '../tables/parameters.ts';
import * as say from '../tables/sources.ts';

/** ANKLE.TO.WALL: knee-to-wall distance, cm, of an ankle range. @throws nothing; may be negative. */
export default defineFunction({
  name: 'ANKLE.TO.WALL',
  family: 'ankle',
  summary: 'Distance of the knee-to-wall test that goes with an ankle range.',
  searchWords: ['target distance', 'knee to wall', 'lunge test', 'dorsiflexion'],
  parameters: [ankle(), tibia(), footMaybe('.152/.246 of the tibia')],
  result: {
    is: 'number',
    unit: 'cm',
    about: 'longest toe to the wall; minus: the knee stays behind the toe tip',
  },
  rule: 'tibia × sin ankle − .75 foot + 5',
  sources: [definition('plane geometry of the test: ankle joint, knee and wall')],
  constants: wallConstants,
  cautions: [say.modelCaution],
  notes: [
    'The inverse of ANKLE.FROM.WALL; it may lie outside the distances which that accepts.',
    say.weightBearingNote,
  ],
  examples: [
    { formula: '=ANKLE.TO.WALL(38, 41.875, 27.118)', gives: 10.4423 },
    {
      formula: '=ANKLE.TO.WALL(20, 41)',
      gives: 0.0228259,
      says: 'a stiff ankle: the knee hardly passes the toes',
    },
  ],
  seeAlso: ['ANKLE.FROM.WALL', 'ANKLE.NEEDED'],
  typical: [38, 41, 26],
  directions: { ankle: 1, tibia: 1, foot: -1 },
  compute: (ankle, tibia, foot) => wallDistance(tibia * sin(ankle), tibia, foot),
  steps: (ankle, tibia, foot) => {
    const ahead = tibia * sin(ankle);
    return [
      ...wallFootSteps(tibia, foot),
      step('Knee ahead of the ankle joint', 'x', 'tibia × sin ankle', ahead, 'cm'),
      step('Toe to wall', 'd', 'x − .75 L + 5', wallDistance(ahead, tibia, foot), 'cm', wallConstants),
    ];
  },
});
