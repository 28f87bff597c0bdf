import { defineFunction } from '../core/define.ts';
import { issue } from '../core/issue.ts';
import { number, optionOr } from '../core/parameter.ts';
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
    number('sd_length', 'cm', 'SD of the error of one length, or of one standing height', {
      bounds: { min: 0, max: 10, because: 'With a larger error nothing was measured.' },
    }),
    number('sd_ankle', 'deg', 'SD of the error of the ankle range', {
      bounds: { min: 0, max: 30, because: 'With a larger error nothing was measured.' },
    }),
    ...build,
    liftOr(),
    ...setup,
    optionOr(
      'tape',
      'how',
      ['tape', 'heights'],
      '"tape": each length measured by itself; "heights": from four standing heights',
    ),
  ],
  result: { is: 'number', unit: 'deg', about: 'SD of LEAN.PARALLEL' },
  rule: [
    "tape: √(sd_length² (T'² + F'² + S'²) + (sd_ankle A')²)",
    "heights: √(sd_length² (T'² + (F' − T')² + (S' − F')² + S'²) + (sd_ankle A')²)",
    "F', S', T', A' change of lean per unit of femur, tibia, trunk, ankle; foot unchanged",
  ].join('\n'),
  sources: [
    definition('first-order propagation of independent errors, central differences of .01'),
    say.linkGeometry,
    say.barOverMidFoot,
  ],
  constants: postureConstants,
  cautions: [say.modelCaution],
  notes: [
    'Take 1 cm and 2° when nothing better is known; TEST.SEM gives your own from repeated trials. Two leans that differ by less than twice this SD × √2 may be the same.',
    '"heights" is for lengths that are differences of four standing heights (shoulder, trochanter, knee, ankle): neighbours share a landmark, and an error of it changes both.',
    'The model’s own errors (a rounded back, an ankle not used whole) come on top.',
  ],
  examples: [
    { formula: '=LEAN.ERROR(1, 2, 42, 41, 51, 38)', gives: 2.1247 },
    {
      formula: '=LEAN.ERROR(1, 2, 42, 41, 51, 38, 0, "high-bar", , 0, "heights")',
      gives: 3.22597,
      says: 'the same lengths from standing heights',
    },
    {
      formula: '=LEAN.ERROR(0.5, 1, 42, 41, 51, 38)',
      gives: 1.06235,
      says: 'half the errors, half the SD',
    },
  ],
  seeAlso: ['LEAN.PARALLEL', 'TEST.SEM', 'TEST.MDC'],
  typical: [1, 2, 42, 41, 51, 38, 1, 'high-bar', 26, 10, 'tape'],
  directions: { sd_length: 1, sd_ankle: 1 },
  compute: (sdLength, sdAnkle, femur, tibia, trunk, ankle, lift, placement, foot, stance, how) => {
    const balance = barRule(placement);
    const length = foot ?? defaultFoot(femur, tibia, trunk);
    const changes = moved.map((_, i) => slope(i, balance, femur, tibia, trunk, ankle, lift, length, stance));
    const missing = changes.findIndex(Number.isNaN);
    if (missing >= 0) {
      const lean = leanOf(balance, femur, tibia, trunk, ankle, lift, 0, length, stance);
      return Number.isNaN(lean)
        ? whyNoPosture(balance, femur, tibia, trunk, ankle, lift, 0, length, stance)
        : issue('#NUM!', 'error-without-posture', { details: { moved: moved[missing]! } });
    }
    return rootOfSquares(errorsOf(how, changes, sdLength, sdAnkle).map(({ size }) => size));
  },
  steps: (sdLength, sdAnkle, femur, tibia, trunk, ankle, lift, placement, foot, stance, how) => {
    const balance = barRule(placement);
    const length = foot ?? defaultFoot(femur, tibia, trunk);
    const changes = moved.map((_, i) => slope(i, balance, femur, tibia, trunk, ankle, lift, length, stance));
    const errors = errorsOf(how, changes, sdLength, sdAnkle);
    return [
      ...footSteps(femur, tibia, trunk, foot),
      step(
        'Lean',
        'β',
        'LEAN.PARALLEL',
        shown(leanOf(balance, femur, tibia, trunk, ankle, lift, 0, length, stance)),
        'deg',
      ),
      ...errors.map(({ from, rule, size }) =>
        step(`Error of the lean from ${from}`, '', rule, shown(Math.abs(size)), 'deg'),
      ),
      step(
        'SD of the lean',
        'SD',
        'root of the sum of squares',
        shown(rootOfSquares(errors.map(({ size }) => size))),
        'deg',
      ),
    ];
  },
});

/** One independent error: what was measured, and how far its SD moves the lean, deg. */
interface MeasuringError {
  readonly from: string;
  readonly rule: string;
  readonly size: number;
}

/** The independent errors of a lean: of three lengths, or of the four standing heights they are differences of. */
function errorsOf(
  how: 'tape' | 'heights',
  [femur, tibia, trunk, ankle]: readonly number[],
  sdLength: number,
  sdAnkle: number,
): readonly MeasuringError[] {
  const one = (from: string, change: number, sd: number, rule = 'change per unit × SD'): MeasuringError => ({
    from,
    rule,
    size: change * sd,
  });
  const lengths =
    how === 'tape'
      ? [one('femur', femur!, sdLength), one('tibia', tibia!, sdLength), one('trunk', trunk!, sdLength)]
      : [
          one('the height of the shoulder', trunk!, sdLength, "T' × SD"),
          one('the height of the trochanter', femur! - trunk!, sdLength, "(F' − T') × SD"),
          one('the height of the knee', tibia! - femur!, sdLength, "(S' − F') × SD"),
          one('the height of the ankle', -tibia!, sdLength, "S' × SD"),
        ];
  return [...lengths, one('ankle', ankle!, sdAnkle)];
}

const rootOfSquares = (sizes: readonly number[]): number => {
  let sum = 0;
  for (const size of sizes) sum += size * size;
  return Math.sqrt(sum);
};
