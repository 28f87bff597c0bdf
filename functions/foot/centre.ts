import { defineFunction } from '../core/define.ts';
import { isIssue } from '../core/issue.ts';
import { cos } from '../posture/angle.ts';
import { noBarWithArmsForward } from '../posture/arms-forward.ts';
import { postureSeen, type Seen } from '../posture/seen.ts';
import { pitchSteps, step } from '../posture/steps.ts';
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

/** FOOT.CENTRE: % of foot length from the heel, may lie outside 0–100. @throws nothing; no posture gives #NUM!. */
export default defineFunction({
  name: 'FOOT.CENTRE',
  family: 'lean',
  summary: 'Where along the foot the weight of body and bar acts in an observed posture.',
  searchWords: ['centre of pressure', 'center of pressure', 'balance', 'tipping', 'observed squat'],
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
  result: { is: 'number', unit: '%', about: '% of foot length from the heel' },
  rule: '50 + 100 x / (foot cosφ cos stance), x the total centre of mass ahead of mid-foot at this lean and shin angle',
  sources: [say.statics, say.linkGeometry],
  constants: systemConstants,
  cautions: [say.modelCaution, 'Outside 0 to 100 the lifter tips over.', say.painCaution, say.loadCaution],
  notes: [
    'Static: where nothing moves, the centre of pressure. The lean of LEAN.LOADED gives 50.',
    say.angleNote,
    say.stanceNote,
  ],
  examples: [
    { formula: '=FOOT.CENTRE(29, 38, 85, 85, 40.93, 41.88, 53.98, 27.12)', gives: 42.9 },
    { formula: '=FOOT.CENTRE(44.93, 28, 85, 20, 44.5, 41, 50, 27.5)', gives: 23.5, says: 'on the heel' },
  ],
  seeAlso: ['FOOT.BALL', 'MOMENT.ANKLE', 'LEAN.LOADED', 'LEAN.OFFSET'],
  typical: [40, 30, 80, 100, 42, 41, 51, 27, 1, 5, 'high-bar', 10],
  directions: { lean: 1, shank: 1, femur: -1 },
  clash: (_lean, _shank, _mass, bar, _femur, _tibia, _trunk, _foot, _lift, _depth, placement) =>
    noBarWithArmsForward(placement, bar),
  compute: (lean, shank, mass, bar, femur, tibia, trunk, foot, lift, depth, placement, stance) => {
    const seen = postureSeen(
      lean,
      shank,
      mass,
      bar,
      femur,
      tibia,
      trunk,
      foot,
      lift,
      depth,
      placement,
      stance,
    );
    return isIssue(seen) ? seen : centreOf(seen, mass + bar, foot, stance);
  },
  steps: (lean, shank, mass, bar, femur, tibia, trunk, foot, lift, depth, placement, stance) => {
    const seen = postureSeen(
      lean,
      shank,
      mass,
      bar,
      femur,
      tibia,
      trunk,
      foot,
      lift,
      depth,
      placement,
      stance,
    );
    if (isIssue(seen)) return pitchSteps(lift, foot);
    return [
      ...pitchSteps(lift, foot),
      step('Knee ahead of mid-foot', 'x_K', 'x_A + tibia sinσ', seen.leg.knee, 'cm'),
      step('Hip ahead of mid-foot', 'x_H', 'x_K − femur cos depth', seen.leg.hip, 'cm'),
      step(
        'Body and bar ahead of mid-foot',
        'x',
        'sum of the masses × their distance / all mass',
        seen.turning / (mass + bar),
        'cm',
      ),
      step(
        'Centre along the foot',
        '',
        '50 + 100 x / (foot cosφ cos stance)',
        centreOf(seen, mass + bar, foot, stance),
        '%',
      ),
    ];
  },
});

const centreOf = ({ turning, pitch }: Seen, weight: number, foot: number, stance: number): number =>
  50 + (100 * turning) / (weight * foot * cos(pitch) * cos(stance));
