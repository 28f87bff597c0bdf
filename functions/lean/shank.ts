import { defineFunction } from '../core/define.ts';
import { issue } from '../core/issue.ts';
import { pitchOf } from '../posture/leg.ts';
import { pitchSteps, shown, step } from '../posture/steps.ts';
import { liftTooHigh, shankTooFlat } from '../posture/why.ts';
import { ballAlongFoot } from '../tables/foot.ts';
import { ankle, footMaybe, liftOr } from '../tables/parameters.ts';
import * as say from '../tables/sources.ts';

/** LEAN.SHANK(ankle, [lift], [foot]): deg from the vertical. @throws nothing; a lift without a foot gives #N/A. */
export default defineFunction({
  name: 'LEAN.SHANK',
  family: 'lean',
  summary: 'Shin angle from the vertical with the whole ankle range used, on the flat or with a heel lift.',
  searchWords: ['shin angle', 'tibia angle', 'knee travel'],
  parameters: [ankle(), liftOr(), footMaybe('needed with a heel lift')],
  result: { is: 'number', unit: 'deg', about: 'shin angle from the vertical, forward plus' },
  rule: 'ankle + asin(lift / (.740 foot))',
  sources: [say.linkGeometry, say.wholeAnkleRange],
  constants: [ballAlongFoot],
  cautions: [say.modelCaution],
  notes: ['A shin angle of 90° or more is not a posture.', say.weightBearingNote, say.angleNote],
  examples: [
    { formula: '=LEAN.SHANK(38)', gives: 38 },
    { formula: '=LEAN.SHANK(38, 2, 27)', gives: 43.7449 },
    { formula: '=LEAN.SHANK(38, 2)', gives: '#N/A', says: 'a heel lift needs the foot it turns' },
  ],
  seeAlso: ['LEAN.KNEE', 'LEAN.KNEE.AHEAD', 'LIFT.PITCH'],
  typical: [38, 2, 27],
  directions: { ankle: 1, lift: 1, foot: -1 },
  clash: (_ankle, lift, foot) =>
    lift !== 0 && foot === undefined
      ? issue('#N/A', 'lift-without-foot', { parameter: 'foot', details: { lift } })
      : undefined,
  compute: (ankle, lift, foot) => {
    const shank = ankle + pitchOf(lift, foot ?? 0);
    if (shank < 90) return shank;
    return liftTooHigh(lift, foot ?? 0) ?? shankTooFlat(ankle, shank - ankle)!;
  },
  steps: (ankle, lift, foot) => [
    ...pitchSteps(lift, foot ?? 0),
    step(
      'Shin angle',
      'σ',
      lift === 0 ? 'ankle' : 'ankle + φ',
      shown(ankle + pitchOf(lift, foot ?? 0)),
      'deg',
    ),
  ],
});
