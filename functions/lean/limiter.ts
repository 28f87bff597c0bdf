import { defineFunction } from '../core/define.ts';
import { assumption } from '../core/source.ts';
import { barRule } from '../posture/balance.ts';
import { deepestOf } from '../posture/deepest.ts';
import { limiterOf } from '../posture/limiter.ts';
import { shown, step } from '../posture/steps.ts';
import { whyNoDescent } from '../posture/why.ts';
import { defaultFoot } from '../tables/foot.ts';
import { build, liftOr, limits, setup } from '../tables/parameters.ts';
import { postureConstants } from '../tables/posture-constants.ts';
import * as say from '../tables/sources.ts';

/** LEAN.LIMITER: what ends the descent, in a word. @throws nothing; nothing at 60° gives #NUM!. */
export default defineFunction({
  name: 'LEAN.LIMITER',
  family: 'lean',
  summary: 'What holds the descent: ankle, knee, hip, lean or nothing.',
  searchWords: ['limiting factor', 'mobility', 'what limits depth', 'restriction', 'stiff ankle'],
  parameters: [...build, liftOr(), ...setup, ...limits],
  result: {
    is: 'text',
    unit: '',
    about: 'what to loosen first',
    oneOf: ['ankle', 'knee', 'hip', 'lean', 'none'],
  },
  rule: '"ankle" when one more degree of ankle deepens LEAN.DEEPEST by .5° or more; else of knee, hip and lean the one whose limit loosened by 1° deepens it most; "none" at −45° or when none gains .02°',
  sources: [say.limitsAssumed, assumption('thresholds of .5°, .02° and .01°: this project’s choice')],
  constants: postureConstants,
  cautions: [say.modelCaution, say.leanError, say.painCaution],
  notes: [
    'Gains within .01° of each other count as equal: knee comes before hip, hip before lean. Limits are loosened past their bounds too.',
    'Strength, balance and habit are not in the model: they can hold a descent that nothing here holds.',
    say.stanceNote,
    say.weightBearingNote,
  ],
  examples: [
    { formula: '=LEAN.LIMITER(46, 38, 47, 24)', gives: 'ankle' },
    { formula: '=LEAN.LIMITER(42, 41, 51, 38)', gives: 'hip' },
  ],
  seeAlso: ['LEAN.DEEPEST', 'LEAN.PART', 'LIFT.FOR.DEPTH'],
  typical: [45, 39, 48, 26, 1, 'high-bar', 26, 10, 55, 140, 150],
  compute: (femur, tibia, trunk, ankle, lift, placement, foot, stance, maxLean, maxHip, maxKnee) => {
    const length = foot ?? defaultFoot(femur, tibia, trunk);
    const deepest = (a: number, lean: number, hip: number, knee: number) =>
      deepestOf(barRule(placement), femur, tibia, trunk, a, lift, length, stance, lean, hip, knee);
    return (
      limiterOf(deepest, ankle, maxLean, maxHip, maxKnee)?.word ??
      whyNoDescent(lift, length, maxLean, maxHip, maxKnee)
    );
  },
  steps: (femur, tibia, trunk, ankle, lift, placement, foot, stance, maxLean, maxHip, maxKnee) => {
    const length = foot ?? defaultFoot(femur, tibia, trunk);
    const deepest = (a: number, lean: number, hip: number, knee: number) =>
      deepestOf(barRule(placement), femur, tibia, trunk, a, lift, length, stance, lean, hip, knee);
    const found = limiterOf(deepest, ankle, maxLean, maxHip, maxKnee);
    const gain = (value: number | undefined) => shown(value ?? Number.NaN, 'no posture');
    return [
      step('Deepest position', 'd', 'LEAN.DEEPEST', gain(found?.deepest), 'deg'),
      step('Deeper by 1° more ankle', 'ankle', 'd − LEAN.DEEPEST(ankle + 1)', gain(found?.ankle), 'deg'),
      step('Deeper by 1° more knee', 'knee', 'd − LEAN.DEEPEST(max_knee + 1)', gain(found?.knee), 'deg'),
      step('Deeper by 1° more hip', 'hip', 'd − LEAN.DEEPEST(max_hip + 1)', gain(found?.hip), 'deg'),
      step('Deeper by 1° more lean', 'lean', 'd − LEAN.DEEPEST(max_lean + 1)', gain(found?.lean), 'deg'),
      step('What holds the descent', '', 'by the rule', found?.word ?? 'no posture', ''),
    ];
  },
});
