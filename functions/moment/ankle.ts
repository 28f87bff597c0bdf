import { defineFunction } from '../core/define.ts';
import { isIssue } from '../core/issue.ts';
import { noBarWithArmsForward } from '../posture/arms-forward.ts';
import { FEET } from '../posture/balance.ts';
import { postureSeen, type Seen } from '../posture/seen.ts';
import { pitchSteps, step } from '../posture/steps.ts';
import { gravity } from '../tables/gravity.ts';
import {
  anyPlacement,
  bar,
  bodyMass,
  depthOr,
  femur,
  foot,
  lean,
  liftOr,
  shank,
  stance,
  tibia,
  trunk,
} from '../tables/parameters.ts';
import { systemConstants } from '../tables/posture-constants.ts';
import * as say from '../tables/sources.ts';

const CM = 0.01;

/** Everything but the feet, about the ankle joints, N·m. */
const momentOf = ({ turning, leg }: Seen, mass: number, bar: number): number =>
  gravity.value * CM * (turning - ((1 - FEET) * mass + bar) * leg.ankle);

/** MOMENT.ANKLE: N·m that the ankles bear, both sides. @throws nothing; a shank of 90 #NUM!, arms forward with a bar #VALUE!. */
export default defineFunction({
  name: 'MOMENT.ANKLE',
  family: 'moments',
  summary: 'Moment that the ankles bear in an observed posture.',
  searchWords: ['calf', 'plantar flexion', 'ankle torque', 'moment arm', 'observed squat'],
  parameters: [
    lean(),
    shank(),
    bodyMass(),
    bar(),
    femur(),
    tibia(),
    trunk(),
    foot(),
    liftOr(),
    depthOr(),
    anyPlacement(),
    stance(),
  ],
  result: { is: 'number', unit: 'N·m', about: 'both ankles together, plus asks the calf to hold' },
  rule: 'g [mass (.093 x_S + .200 x_T + .678 x_H + U) + bar x_bar − (.971 mass + bar) x_A], x ahead of mid-foot in m',
  sources: [say.statics, say.linkGeometry],
  constants: [gravity, ...systemConstants],
  cautions: [say.modelCaution, say.painCaution, say.loadCaution],
  notes: [
    say.observedPosture,
    say.staticLoad,
    'Body and bar need not be over mid-foot. Negative: the shin muscles work.',
    'With toe-out this is the part seen from the side; what the ankle bears sideways is not in it.',
    say.angleNote,
  ],
  examples: [
    { formula: '=MOMENT.ANKLE(40, 30, 80, 100, 42, 41, 51, 27)', gives: 74.2354 },
    {
      formula: '=MOMENT.ANKLE(30, 30, 80, 100, 42, 41, 51, 27)',
      gives: -25.9266,
      says: 'more upright, weight further back',
    },
  ],
  seeAlso: ['FOOT.CENTRE', 'MOMENT.KNEE', 'MOMENT.HIP'],
  typical: [40, 30, 80, 100, 42, 41, 51, 27, 1, 5, 'high-bar', 10],
  directions: { lean: 1, shank: 1, femur: -1 },
  clash: (_lean, _shank, _mass, bar, _femur, _tibia, _trunk, _foot, _lift, _depth, placement) =>
    noBarWithArmsForward(placement, bar),
  compute: (lean, shank, mass, bar, ...rest) => {
    const seen = postureSeen(lean, shank, mass, bar, ...rest);
    return isIssue(seen) ? seen : momentOf(seen, mass, bar);
  },
  steps: (lean, shank, mass, bar, femur, tibia, trunk, foot, lift, ...rest) => {
    const seen = postureSeen(lean, shank, mass, bar, femur, tibia, trunk, foot, lift, ...rest);
    if (isIssue(seen)) return pitchSteps(lift, foot);
    const { leg, turning } = seen;
    return [
      ...pitchSteps(lift, foot),
      step('Ankle joint ahead of mid-foot', 'x_A', 'from foot, heel lift and toe-out', leg.ankle, 'cm'),
      step('Knee ahead of mid-foot', 'x_K', 'x_A + tibia sinσ', leg.knee, 'cm'),
      step('Hip ahead of mid-foot', 'x_H', 'x_K − femur cos depth', leg.hip, 'cm'),
      step(
        'Body and bar ahead of mid-foot',
        'x',
        'sum of the masses × their distance / all mass',
        turning / (mass + bar),
        'cm',
      ),
      step('Mass above the ankles', '', '.971 mass + bar', (1 - FEET) * mass + bar, 'kg'),
      step(
        'Moment at the ankles',
        'M',
        'g [(mass + bar) x − (.971 mass + bar) x_A], x in m',
        momentOf(seen, mass, bar),
        'N·m',
        [gravity],
      ),
    ];
  },
});
