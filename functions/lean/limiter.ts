import { defineFunction } from '../core/define.ts';
import { assumption } from '../core/source.ts';
import { gainsOf, limiterOf } from '../posture/limiter.ts';
import { gainSteps } from '../posture/limiter-steps.ts';
import { step } from '../posture/steps.ts';
import { whyNoDescent } from '../posture/why.ts';
import { defaultFoot } from '../tables/foot.ts';
import { build, liftOr, limits, setup } from '../tables/parameters.ts';
import { postureConstants } from '../tables/posture-constants.ts';
import * as say from '../tables/sources.ts';

/** LEAN.LIMITER: what limits the depth, in a word. @throws nothing; nothing at 60° gives #NUM!. */
export default defineFunction({
  name: 'LEAN.LIMITER',
  family: 'lean',
  summary: 'What limits the depth: ankle, knee, hip, lean or nothing.',
  searchWords: ['limiting factor', 'mobility', 'what limits depth', 'restriction', 'stiff ankle'],
  parameters: [...build, liftOr(), ...setup, ...limits],
  result: {
    is: 'text',
    unit: '',
    about: 'the limit that deepens most when loosened',
    oneOf: ['ankle', 'knee', 'hip', 'lean', 'none'],
  },
  rule: 'of ankle, knee, hip and lean the one whose limit loosened by 1° deepens LEAN.DEEPEST most; "none" at −45° or when none gains .02°',
  sources: [say.limitsAssumed, assumption('thresholds of .02° and .01°: this project’s choice')],
  constants: postureConstants,
  cautions: [say.modelCaution, say.leanError, say.limitsCaution, say.painCaution],
  notes: [
    'Gains within .01° of each other are equal: ankle comes before knee, knee before hip, hip before lean. Limits are loosened past their bounds too.',
    'LEAN.GAIN gives the gain of each limit.',
    'Strength, balance and habit are not in the model; they can limit the depth too.',
    say.stanceNote,
    say.weightBearingNote,
  ],
  examples: [
    { formula: '=LEAN.LIMITER(46, 38, 47, 24)', gives: 'ankle' },
    { formula: '=LEAN.LIMITER(42, 41, 51, 38)', gives: 'hip' },
  ],
  seeAlso: ['LEAN.GAIN', 'LEAN.DEEPEST', 'LEAN.PART', 'LIFT.FOR.DEPTH'],
  typical: [45, 39, 48, 26, 1, 'high-bar', 26, 10, 55, 140, 150],
  compute: (femur, tibia, trunk, ankle, lift, placement, foot, stance, lean, hip, knee) => {
    const length = foot ?? defaultFoot(femur, tibia, trunk);
    const found = gainsOf(placement, femur, tibia, trunk, ankle, lift, length, stance, lean, hip, knee);
    return found ? limiterOf(found) : whyNoDescent(lift, length, lean, hip, knee);
  },
  steps: (femur, tibia, trunk, ankle, lift, placement, foot, stance, lean, hip, knee) => {
    const length = foot ?? defaultFoot(femur, tibia, trunk);
    const found = gainsOf(placement, femur, tibia, trunk, ankle, lift, length, stance, lean, hip, knee);
    return [
      ...gainSteps(found),
      step('Depth limited by', '', 'the largest gain', found ? limiterOf(found) : 'no posture', ''),
    ];
  },
});
