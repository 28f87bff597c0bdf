import { defineFunction } from '../core/define.ts';
import { option } from '../core/parameter.ts';
import { definition } from '../core/source.ts';
import { gainsOf, limitWords } from '../posture/limiter.ts';
import { gainSteps } from '../posture/limiter-steps.ts';
import { whyNoDescent } from '../posture/why.ts';
import { defaultFoot } from '../tables/foot.ts';
import { build, liftOr, limits, setup } from '../tables/parameters.ts';
import { postureConstants } from '../tables/posture-constants.ts';
import * as say from '../tables/sources.ts';

/** LEAN.GAIN: deg deeper for one degree more of a limit, 0 or more. @throws nothing; nothing at 60° gives #NUM!. */
export default defineFunction({
  name: 'LEAN.GAIN',
  family: 'lean',
  summary: 'How much deeper a lifter gets for one more degree of ankle, knee, hip or lean.',
  searchWords: ['mobility', 'what limits depth', 'stretching', 'gain in depth', 'limiting factor'],
  parameters: [
    option('limit', limitWords, 'the limit to loosen by 1°'),
    ...build,
    liftOr(),
    ...setup,
    ...limits,
  ],
  result: { is: 'number', unit: 'deg', about: 'degrees deeper for one degree more of that limit' },
  rule: 'LEAN.DEEPEST − LEAN.DEEPEST with the limit loosened by 1°, not below 0',
  sources: [say.linkGeometry, say.barOverMidFoot, say.limitsAssumed, definition('difference for one degree')],
  constants: postureConstants,
  cautions: [say.modelCaution, say.leanError, say.limitsCaution, say.painCaution],
  notes: [
    '0 where the limit is not what limits, and at −45°. The limit is loosened past its bound too.',
    'The gain can be large where the lean is at its limit near parallel: the search then goes on below it.',
    say.stanceNote,
    say.weightBearingNote,
  ],
  examples: [
    { formula: '=LEAN.GAIN("ankle", 46, 38, 47, 24)', gives: 1.1 },
    { formula: '=LEAN.GAIN("knee", 46, 38, 47, 24)', gives: 0, says: 'the knee is not what limits' },
  ],
  seeAlso: ['LEAN.LIMITER', 'LEAN.DEEPEST', 'LIFT.FOR.DEPTH'],
  typical: ['ankle', 45, 39, 48, 26, 1, 'high-bar', 26, 10, 55, 140, 150],
  compute: (limit, femur, tibia, trunk, ankle, lift, placement, foot, stance, lean, hip, knee) => {
    const length = foot ?? defaultFoot(femur, tibia, trunk);
    const found = gainsOf(placement, femur, tibia, trunk, ankle, lift, length, stance, lean, hip, knee);
    return found ? found[limit] : whyNoDescent(lift, length, lean, hip, knee);
  },
  steps: (_limit, femur, tibia, trunk, ankle, lift, placement, foot, stance, lean, hip, knee) =>
    gainSteps(
      gainsOf(
        placement,
        femur,
        tibia,
        trunk,
        ankle,
        lift,
        foot ?? defaultFoot(femur, tibia, trunk),
        stance,
        lean,
        hip,
        knee,
      ),
    ),
});
