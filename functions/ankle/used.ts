import { defineFunction } from '../core/define.ts';
import { issue } from '../core/issue.ts';
import { number } from '../core/parameter.ts';
import { definition } from '../core/source.ts';
import { pitchOf } from '../posture/leg.ts';
import { pitchSteps, step } from '../posture/steps.ts';
import { liftTooHigh } from '../posture/why.ts';
import { ballAlongFoot } from '../tables/foot.ts';
import { footMaybe, liftOr, rangeOfAnkle, shank } from '../tables/parameters.ts';
import * as say from '../tables/sources.ts';

/** ANKLE.USED(shank, ankle, [lift], [foot]): share of the range, no unit. @throws nothing; a lift without a foot #N/A, ankle 0 #DIV/0!. */
export default defineFunction({
  name: 'ANKLE.USED',
  family: 'ankle',
  summary: 'Share of the ankle range in use at an observed shin angle.',
  searchWords: ['range not used', 'shin angle', 'dorsiflexion', 'heel rise', 'observed squat'],
  parameters: [
    shank(),
    number('ankle', 'deg', 'weight-bearing dorsiflexion: tibia from the vertical, knee bent, heel down', {
      bounds: { min: 0, max: rangeOfAnkle.max, because: 'Below 0 there is no range to share.' },
    }),
    liftOr(),
    footMaybe('needed with a heel lift'),
  ],
  result: { is: 'number', unit: '', about: 'share of the range; 1 is all of it' },
  rule: '(shank − asin(lift / (.740 foot))) / ankle',
  sources: [definition('what is used over what there is'), say.linkGeometry],
  constants: [ballAlongFoot],
  cautions: [say.modelCaution],
  notes: [
    'Above 1 the heel rises or the ankle test was too low; below 0 the shin is behind the pitch of the sole.',
    'Measured lifters use about three quarters: shin angles of 27–31° (Sato 2013) with ranges of 38–40° (Calatayud 2015).',
    say.weightBearingNote,
    say.angleNote,
  ],
  examples: [
    { formula: '=ANKLE.USED(30, 40)', gives: 0.75 },
    {
      formula: '=ANKLE.USED(30, 40, 2, 27)',
      gives: 0.606377,
      says: 'the heel lift gives 5.7° of the shin angle',
    },
    { formula: '=ANKLE.USED(30, 40, 2)', gives: '#N/A', says: 'a heel lift needs the foot it turns' },
  ],
  seeAlso: ['LEAN.EXPLAIN', 'LEAN.SHANK', 'PHOTO.LEAN', 'ANKLE.FROM.WALL'],
  typical: [30, 38, 1, 27],
  directions: { shank: 1, ankle: -1, lift: -1, foot: 1 },
  compute: (shank, ankle, lift, foot) => {
    if (lift !== 0 && foot === undefined)
      return issue('#N/A', 'lift-without-foot', { parameter: 'foot', details: { lift } });
    const pitch = pitchOf(lift, foot ?? 0);
    if (Number.isNaN(pitch)) return liftTooHigh(lift, foot!)!;
    if (ankle === 0) return issue('#DIV/0!', 'zero-divisor', { parameter: 'ankle', received: 0 });
    return (shank - pitch) / ankle;
  },
  steps: (shank, ankle, lift, foot) => {
    const used = shank - pitchOf(lift, foot ?? 0);
    return [
      ...pitchSteps(lift, foot ?? 0),
      step('Ankle range in use', 'a_u', lift === 0 ? 'shank' : 'shank − φ', used, 'deg'),
      step('Share of the range', '', 'a_u / ankle', used / ankle, ''),
    ];
  },
});
