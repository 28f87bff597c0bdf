import { defineFunction } from '../core/define.ts';
import { issue } from '../core/issue.ts';
import { option } from '../core/parameter.ts';
import { assumption, published } from '../core/source.ts';
import { barRule } from '../posture/balance.ts';
import { leansOfMixtures, parts, referenceBuild, shapleyOf, swappedIn } from '../posture/part.ts';
import { footSteps, shown, step } from '../posture/steps.ts';
import { whyNoPosture } from '../posture/why.ts';
import { defaultFoot } from '../tables/foot.ts';
import { build, liftOr, referenceAnkle, setup } from '../tables/parameters.ts';
import { postureConstants } from '../tables/posture-constants.ts';
import * as say from '../tables/sources.ts';
import { referenceFemur, referenceTibia, referenceTrunk, surveySource } from '../tables/survey.ts';

/** LEAN.PART: deg of lean above a reference that comes from one measure. @throws nothing; no posture gives #NUM!. */
export default defineFunction({
  name: 'LEAN.PART',
  family: 'lean',
  summary: 'How much of a lifter’s lean, above a reference build, comes from femur, tibia, trunk or ankle.',
  searchWords: ['why lean', 'where does the lean come from', 'long femur', 'contribution', 'attribution'],
  parameters: [option('part', parts, 'whose part'), ...build, referenceAnkle(), liftOr(), ...setup],
  result: { is: 'number', unit: 'deg', about: 'part of the difference from the reference’s lean' },
  rule: 'Shapley value: the change when this measure turns from the reference’s into the lifter’s, averaged over all 24 orders of the four',
  sources: [
    published('Shapley 1953, A value for n-person games, Annals of Mathematics Studies 28:307–317'),
    surveySource,
    assumption('reference ankle 38°, near the published means of the weight-bearing lunge, 39–41°'),
    say.barOverMidFoot,
  ],
  constants: [referenceFemur, referenceTibia, referenceTrunk, ...postureConstants],
  cautions: [say.leanError, say.modelCaution],
  notes: [
    'The four parts add up to LEAN.PARALLEL of the lifter less LEAN.PARALLEL of the reference.',
    'The reference has this lifter’s femur + tibia + trunk, shared out as in the survey, and this lifter’s foot.',
    say.weightBearingNote,
    say.stanceNote,
  ],
  examples: [
    { formula: '=LEAN.PART("femur", 45, 40, 48, 30)', gives: 7.13703 },
    { formula: '=LEAN.PART("ankle", 45, 40, 48, 30)', gives: 6.3755 },
  ],
  seeAlso: ['LEAN.EXPLAIN', 'LEAN.PARALLEL', 'LEAN.ERROR', 'ANKLE.NEEDED', 'SEG.NORM'],
  typical: ['femur', 45, 40, 48, 30, 38, 1, 'high-bar', 26, 10],
  compute: (part, femur, tibia, trunk, ankle, referenceAnkle, lift, placement, foot, stance) => {
    const length = foot ?? defaultFoot(femur, tibia, trunk);
    const balance = barRule(placement);
    const leans = leansOfMixtures(
      balance,
      femur,
      tibia,
      trunk,
      ankle,
      referenceAnkle,
      lift,
      0,
      length,
      stance,
    );
    const value = shapleyOf(part, leans);
    if (!Number.isNaN(value)) return value;
    return Number.isNaN(leans[15]!)
      ? whyNoPosture(balance, femur, tibia, trunk, ankle, lift, 0, length, stance)
      : issue('#NUM!', 'part-without-posture', {
          details: { swapped: swappedIn(leans.findIndex(Number.isNaN)) },
        });
  },
  steps: (part, femur, tibia, trunk, ankle, referenceAnkle, lift, placement, foot, stance) => {
    const length = foot ?? defaultFoot(femur, tibia, trunk);
    const leans = leansOfMixtures(
      barRule(placement),
      femur,
      tibia,
      trunk,
      ankle,
      referenceAnkle,
      lift,
      0,
      length,
      stance,
    );
    const [f, s, t] = referenceBuild(femur + tibia + trunk);
    return [
      ...footSteps(femur, tibia, trunk, foot),
      step('Femur of the reference', 'F₀', '.2987 × (femur + tibia + trunk)', f, 'cm', [referenceFemur]),
      step('Tibia of the reference', 'S₀', '.3114 × (femur + tibia + trunk)', s, 'cm', [referenceTibia]),
      step('Trunk of the reference', 'T₀', '.3899 × (femur + tibia + trunk)', t, 'cm', [referenceTrunk]),
      step('Lean of the reference', 'β₀', 'LEAN.PARALLEL', shown(leans[0]!), 'deg'),
      step('Lean of the lifter', 'β', 'LEAN.PARALLEL', shown(leans[15]!), 'deg'),
      ...parts.map((p) =>
        step(
          `Part of ${p}`,
          p === part ? 'this part' : '',
          'mean over 24 orders',
          shown(shapleyOf(p, leans)),
          'deg',
        ),
      ),
    ];
  },
});
