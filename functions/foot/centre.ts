import { defineFunction } from '../core/define.ts';
import { issue } from '../core/issue.ts';
import { cos } from '../posture/angle.ts';
import { noBarWithArmsForward } from '../posture/arms-forward.ts';
import { demand, given, newBalance, setBalance } from '../posture/balance.ts';
import { newLeg, pitchOf, setLeg } from '../posture/leg.ts';
import { liftTooHigh } from '../posture/why.ts';
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
import { carryOf } from '../tables/placements.ts';
import { systemConstants } from '../tables/posture-constants.ts';
import * as say from '../tables/sources.ts';

// filled and read within one call
const balance = newBalance();
const leg = newLeg();

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
  seeAlso: ['FOOT.BALL', 'LEAN.LOADED', 'LEAN.OFFSET'],
  typical: [40, 30, 80, 100, 42, 41, 51, 27, 1, 5, 'high-bar', 10],
  directions: { lean: 1, shank: 1, femur: -1 },
  clash: (_lean, _shank, _mass, bar, _femur, _tibia, _trunk, _foot, _lift, _depth, placement) =>
    noBarWithArmsForward(placement, bar),
  compute: (lean, shank, mass, bar, femur, tibia, trunk, foot, lift, depth, placement, stance) => {
    const pitch = pitchOf(lift, foot);
    if (Number.isNaN(pitch)) return liftTooHigh(lift, foot)!;
    if (shank === 90) return issue('#NUM!', 'shank-level', { details: { shank, ankle: 90 - pitch, pitch } });
    setBalance(balance, carryOf(placement), mass, bar);
    setLeg(leg, femur, tibia, foot, pitch, shank, depth, stance);
    const ahead = (given(balance, trunk, lean) - demand(balance, leg, trunk)) / balance.weight;
    return 50 + (100 * ahead) / (foot * cos(pitch) * cos(stance));
  },
});
