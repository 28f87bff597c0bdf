import { defineFunction } from '../core/define.ts';
import { issue } from '../core/issue.ts';
import { number } from '../core/parameter.ts';
import { definition } from '../core/source.ts';
import { barRule } from '../posture/balance.ts';
import { leanOf } from '../posture/lean.ts';
import { footSteps, shown, step } from '../posture/steps.ts';
import { whyNoPosture } from '../posture/why.ts';
import { defaultFoot } from '../tables/foot.ts';
import { build, liftOr, setup } from '../tables/parameters.ts';
import { postureConstants } from '../tables/posture-constants.ts';
import * as say from '../tables/sources.ts';

const STEP = 0.01;
const moved = ['femur', 'tibia', 'trunk', 'ankle'] as const;

/** Degrees of lean for one cm (femur, tibia, trunk) or one degree (ankle) more: a central difference. */
function slope(
  which: number,
  balance: Parameters<typeof leanOf>[0],
  femur: number,
  tibia: number,
  trunk: number,
  ankle: number,
  lift: number,
  foot: number,
  stance: number,
): number {
  const at = (by: number): number =>
    leanOf(
      balance,
      which === 0 ? femur + by : femur,
      which === 1 ? tibia + by : tibia,
      which === 2 ? trunk + by : trunk,
      which === 3 ? ankle + by : ankle,
      lift,
      0,
      foot,
      stance,
    );
  return (at(STEP) - at(-STEP)) / (2 * STEP);
}

/** LEAN.ERROR: SD of LEAN.PARALLEL, deg, from measuring errors. @throws nothing; no balanced posture gives #NUM!. */
export default defineFunction({
  name: 'LEAN.ERROR',
  family: 'lean',
  summary: 'How uncertain a lean at parallel is when lengths and ankle carry measuring errors.',
  searchWords: ['uncertainty', 'measuring error', 'confidence', 'precision', 'error propagation'],
  parameters: [
    number('sd_length', 'cm', 'SD of the error of femur, tibia and trunk, each', {
      bounds: { min: 0, max: 10, because: 'With a larger error nothing was measured.' },
    }),
    number('sd_ankle', 'deg', 'SD of the error of the ankle range', {
      bounds: { min: 0, max: 30, because: 'With a larger error nothing was measured.' },
    }),
    ...build,
    liftOr(),
    ...setup,
  ],
  result: { is: 'number', unit: 'deg', about: 'SD of LEAN.PARALLEL' },
  rule: '√ of the sum of (change of lean per unit × SD)² over femur, tibia, trunk and ankle; foot held',
  sources: [
    definition('first-order propagation of independent errors, central differences of .01'),
    say.linkGeometry,
    say.barOverMidFoot,
  ],
  constants: postureConstants,
  cautions: [say.modelCaution],
  notes: [
    'Take 1 cm and 2° when nothing better is known; TEST.SEM gives your own from repeated trials. Two leans that differ by less than twice this SD × √2 may be the same.',
    'The model’s own errors (a rounded back, an ankle not used whole) come on top.',
  ],
  examples: [
    { formula: '=LEAN.ERROR(1, 2, 42, 41, 51, 38)', gives: 2.1247 },
    {
      formula: '=LEAN.ERROR(0.5, 1, 42, 41, 51, 38)',
      gives: 1.06235,
      says: 'half the errors, half the SD',
    },
  ],
  seeAlso: ['LEAN.PARALLEL', 'TEST.SEM', 'TEST.MDC'],
  typical: [1, 2, 42, 41, 51, 38, 1, 'high-bar', 26, 10],
  directions: { sd_length: 1, sd_ankle: 1 },
  compute: (sdLength, sdAnkle, femur, tibia, trunk, ankle, lift, placement, foot, stance) => {
    const balance = barRule(placement);
    const length = foot ?? defaultFoot(femur, tibia, trunk);
    let sum = 0;
    for (let which = 0; which < 4; which++) {
      const change = slope(which, balance, femur, tibia, trunk, ankle, lift, length, stance);
      if (Number.isNaN(change)) {
        const lean = leanOf(balance, femur, tibia, trunk, ankle, lift, 0, length, stance);
        return Number.isNaN(lean)
          ? whyNoPosture(balance, femur, tibia, trunk, ankle, lift, 0, length, stance)
          : issue('#NUM!', 'error-without-posture', { details: { moved: moved[which]! } });
      }
      sum += (change * (which === 3 ? sdAnkle : sdLength)) ** 2;
    }
    return Math.sqrt(sum);
  },
  steps: (sdLength, sdAnkle, femur, tibia, trunk, ankle, lift, placement, foot, stance) => {
    const balance = barRule(placement);
    const length = foot ?? defaultFoot(femur, tibia, trunk);
    const slopes = moved.map((_, i) => slope(i, balance, femur, tibia, trunk, ankle, lift, length, stance));
    const parts = slopes.map((s, i) => s * (i === 3 ? sdAnkle : sdLength));
    return [
      ...footSteps(femur, tibia, trunk, foot),
      step(
        'Lean',
        'β',
        'LEAN.PARALLEL',
        shown(leanOf(balance, femur, tibia, trunk, ankle, lift, 0, length, stance)),
        'deg',
      ),
      ...moved.map((name, i) =>
        step(`Error of the lean from ${name}`, '', 'change per unit × SD', shown(Math.abs(parts[i]!)), 'deg'),
      ),
      step('SD of the lean', 'SD', 'root of the sum of squares', shown(Math.hypot(...parts)), 'deg'),
    ];
  },
});
