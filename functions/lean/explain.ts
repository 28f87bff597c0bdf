import { defineFunction } from '../core/define.ts';
import { option } from '../core/parameter.ts';
import { assumption, published } from '../core/source.ts';
import {
  buildPart,
  explained,
  footOf,
  mixtureLeans,
  type Observed,
  observedShinLean,
  referenceLean,
  explain as theirPart,
  wholeRangeLean,
} from '../posture/explain.ts';
import { pitchOf } from '../posture/leg.ts';
import { parts, shapleyOf } from '../posture/part.ts';
import { footSteps, pitchSteps, shown, step } from '../posture/steps.ts';
import { build, depth, lean, liftOr, referenceAnkle, setup, shank } from '../tables/parameters.ts';
import { postureConstants } from '../tables/posture-constants.ts';
import * as say from '../tables/sources.ts';
import { referenceFemur, referenceTibia, referenceTrunk, surveySource } from '../tables/survey.ts';

type Setup = readonly [Observed['placement'], number | undefined, number];

const observed = (
  lean: number,
  shank: number,
  depth: number,
  [femur, tibia, trunk, ankle]: readonly [number, number, number, number],
  referenceAnkle: number,
  lift: number,
  [placement, foot, stance]: Setup,
): Observed => ({
  lean,
  shank,
  depth,
  femur,
  tibia,
  trunk,
  ankle,
  referenceAnkle,
  lift,
  placement,
  foot,
  stance,
});

/** LEAN.EXPLAIN: deg of an observed lean that come from one part. @throws nothing; no posture that is asked for gives #NUM!. */
export default defineFunction({
  name: 'LEAN.EXPLAIN',
  family: 'lean',
  summary: 'How much of an observed lean comes from build, ankle range, range not used, and bar or back.',
  searchWords: ['why lean', 'observed lean', 'from build', 'from ankle', 'range not used', 'contribution'],
  parameters: [
    option('part', explained, 'which part; "build" is femur + tibia + trunk'),
    lean(),
    shank(),
    depth(),
    ...build,
    referenceAnkle(),
    liftOr(),
    ...setup,
  ],
  result: { is: 'number', unit: 'deg', about: 'part of the observed lean' },
  rule: [
    'reference: LEAN.AT(depth) of the reference build with the reference ankle',
    'femur, tibia, trunk, ankle: Shapley value of the change from reference to lifter, at this depth and lift',
    'use: LEAN.AT(depth) with ankle = shank − pitch, less LEAN.AT(depth) with the ankle given',
    'balance: lean − LEAN.AT(depth) with ankle = shank − pitch',
  ].join('\n'),
  sources: [
    published('Shapley 1953, A value for n-person games, Annals of Mathematics Studies 28:307–317'),
    surveySource,
    assumption('reference ankle 38°, near the published means of the weight-bearing lunge, 39–41°'),
    say.barOverMidFoot,
    say.linkGeometry,
  ],
  constants: [referenceFemur, referenceTibia, referenceTrunk, ...postureConstants],
  cautions: [
    say.leanError,
    say.modelCaution,
    'Lengths estimated from stature say nothing about build: measure them before reading these parts.',
    'A part smaller than the error of the lean is within error.',
    say.painCaution,
  ],
  notes: [
    'The seven parts (reference, femur, tibia, trunk, ankle, use, balance) add up to the observed lean.',
    'use: above 0 where ankle range is not used; below 0 where the heel rises or the ankle test was too low.',
    'balance: the bar is not over mid-foot, the back is rounded, or the angles carry measuring error.',
    'The reference has this lifter’s femur + tibia + trunk, shared out as in the survey, and this lifter’s foot.',
    say.weightBearingNote,
    say.angleNote,
    say.stanceNote,
  ],
  examples: [
    { formula: '=LEAN.EXPLAIN("use", 48, 25, 0, 45, 40, 48, 30)', gives: 5.06002, says: '5 of 30° not used' },
    { formula: '=LEAN.EXPLAIN("build", 48, 25, 0, 45, 40, 48, 30)', gives: 10.97335 },
    {
      formula: '=LEAN.EXPLAIN("balance", 48, 25, 0, 45, 40, 48, 30)',
      gives: -2.99784,
      says: 'more upright than bar over mid-foot',
    },
  ],
  seeAlso: ['LEAN.PART', 'ANKLE.USED', 'LEAN.AT', 'PHOTO.LEAN'],
  typical: ['use', 48, 28, 5, 45, 40, 48, 30, 38, 1, 'high-bar', 26, 10],
  directions: { shank: -1 },
  compute: (part, lean, shank, depth, femur, tibia, trunk, ankle, theirs, lift, ...stands) =>
    theirPart(part, observed(lean, shank, depth, [femur, tibia, trunk, ankle], theirs, lift, stands)),
  steps: (part, lean, shank, depth, femur, tibia, trunk, ankle, theirs, lift, ...stands) => {
    const o = observed(lean, shank, depth, [femur, tibia, trunk, ankle], theirs, lift, stands);
    const pitch = pitchOf(lift, footOf(o));
    const [reference, whole, seen] = [referenceLean(o), wholeRangeLean(o), observedShinLean(o)];
    const leans = mixtureLeans(o);
    const asked = (name: string) => (name === part ? 'this part' : '');
    return [
      ...footSteps(femur, tibia, trunk, stands[1]),
      ...pitchSteps(lift, footOf(o)),
      step('Ankle range in use', 'a_u', 'shank − φ', shown(shank - pitch), 'deg'),
      step(
        'Lean of the reference',
        asked('reference'),
        'LEAN.AT of the reference build',
        shown(reference),
        'deg',
      ),
      step('Minimum lean, the whole range used', 'β_a', 'LEAN.AT with the ankle given', shown(whole), 'deg'),
      step('Minimum lean at the observed shin angle', 'β_u', 'LEAN.AT with ankle = a_u', shown(seen), 'deg'),
      ...parts.map((p) =>
        step(`From ${p}`, asked(p), 'mean over 24 orders', shown(shapleyOf(p, leans)), 'deg'),
      ),
      step('From build', asked('build'), 'femur + tibia + trunk', shown(buildPart(leans)), 'deg'),
      step('From range not used', asked('use'), 'β_u − β_a', shown(seen - whole), 'deg'),
      step('From bar or back', asked('balance'), 'lean − β_u', shown(lean - seen), 'deg'),
    ];
  },
});
