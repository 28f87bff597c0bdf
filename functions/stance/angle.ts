import { defineFunction } from '../core/define.ts';
import { type Issue, issue } from '../core/issue.ts';
import { number } from '../core/parameter.ts';
import { assumption } from '../core/source.ts';
import { asin, cos, sin } from '../posture/angle.ts';
import { shown, step } from '../posture/steps.ts';
import { depthOr, femur, shank, stanceBounds, tibia } from '../tables/parameters.ts';
import * as say from '../tables/sources.ts';

/** How far the hip joint is behind the ankle joint with the leg straight ahead, cm. */
const hipBehind = (femur: number, tibia: number, shank: number, depth: number): number =>
  femur * cos(depth) - tibia * sin(shank);

/** STANCE.ANGLE: deg that feet and knees are turned out. @throws nothing; no angle of 0 to 60 #NUM!. */
export default defineFunction({
  name: 'STANCE.ANGLE',
  family: 'lean',
  summary: 'Toe-out angle that goes with the width of a stance, knees over the feet.',
  searchWords: ['toe-out', 'stance width', 'feet turned out', 'wide squat', 'foot angle'],
  parameters: [
    number('width', 'cm', 'between the ankle joints, each the middle between its malleoli', {
      bounds: { min: 0, max: 150, because: 'Nobody squats with the feet further apart.' },
    }),
    number('hips', 'cm', 'between the hip joints, about .10 of stature', {
      bounds: { min: 10, max: 40, because: 'Hip joints of people are this far apart.' },
    }),
    femur(),
    tibia(),
    shank(),
    depthOr(),
  ],
  result: {
    is: 'number',
    unit: 'deg',
    about: 'feet and knees turned out, each side; for "stance" of LEAN.AT',
  },
  rule: 'asin((width − hips) / (2 (femur cos depth − tibia sin shank)))',
  sources: [say.linkGeometry, assumption('hip joints about .10 of stature apart; knees over the feet')],
  cautions: [say.modelCaution],
  notes: [
    'Measure between the ankle joints. The backs of the heels are closer by .50 foot × sin of the angle, about 7 cm at 30°.',
    say.stanceNote,
    say.angleNote,
  ],
  examples: [
    { formula: '=STANCE.ANGLE(40, 17, 42, 41, 30)', gives: 32.336 },
    { formula: '=STANCE.ANGLE(17, 17, 42, 41, 30)', gives: 0, says: 'ankles under the hips' },
    { formula: '=STANCE.ANGLE(70, 17, 42, 41, 38)', gives: '#NUM!', says: 'too wide for these legs' },
  ],
  seeAlso: ['LEAN.AT', 'LEAN.HIP'],
  typical: [40, 17, 42, 41, 30, 5],
  directions: { width: 1, hips: -1, femur: -1, tibia: 1, shank: 1 },
  compute: (width, hips, femur, tibia, shank, depth) => {
    const behind = hipBehind(femur, tibia, shank, depth);
    if (!(behind > 0)) return issue('#NUM!', 'hip-over-ankle', { parameter: 'shank', details: { behind } });
    const angle = asin((width - hips) / (2 * behind));
    return angle >= stanceBounds.min && angle <= stanceBounds.max ? angle : noSuchStance(width, hips, behind);
  },
  steps: (width, hips, femur, tibia, shank, depth) => {
    const behind = hipBehind(femur, tibia, shank, depth);
    return [
      step('Hip behind the ankle joint', 'x', 'femur cos depth − tibia sin shank', behind, 'cm'),
      step('Ankle out from the hip', 'w', '(width − hips) / 2', (width - hips) / 2, 'cm'),
      step('Toe-out angle', '', 'asin(w / x)', shown(asin((width - hips) / (2 * behind)), 'none'), 'deg'),
    ];
  },
});

const noSuchStance = (width: number, hips: number, behind: number): Issue =>
  issue('#NUM!', 'no-such-stance', {
    parameter: 'width',
    received: width,
    unit: 'cm',
    details: { hips, widest: hips + 2 * behind * sin(stanceBounds.max) },
  });
