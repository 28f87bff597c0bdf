import { defineFunction } from '../core/define.ts';
import { noBarWithArmsForward } from '../posture/arms-forward.ts';
import { newBalance, setBalance } from '../posture/balance.ts';
import { leanOf } from '../posture/lean.ts';
import { leanSteps } from '../posture/steps.ts';
import { whyNoPosture } from '../posture/why.ts';
import { defaultFoot } from '../tables/foot.ts';
import {
  anyPlacement,
  bar,
  bodyMass,
  build,
  depthOr,
  footMaybe,
  liftOr,
  stance,
} from '../tables/parameters.ts';
import { carryOf } from '../tables/placements.ts';
import { systemConstants } from '../tables/posture-constants.ts';
import * as say from '../tables/sources.ts';

// filled and read within one call
const balance = newBalance();

/** LEAN.LOADED: trunk lean, deg, by the system rule. @throws nothing; no balanced posture gives #NUM!. */
export default defineFunction({
  name: 'LEAN.LOADED',
  family: 'lean',
  summary: 'Trunk lean with the centre of body and bar together over mid-foot.',
  searchWords: ['system centre of mass', 'center of mass', 'goblet', 'light bar', 'bar weight', 'body mass'],
  parameters: [bodyMass(), bar(), ...build, liftOr(), depthOr(), anyPlacement(), footMaybe(), stance()],
  result: { is: 'number', unit: 'deg', about: 'minimum trunk lean at that depth' },
  rule: 'masses × distances ahead of mid-foot add up to 0: A sinβ + C cosβ = D, β = asin(D / √(A² + C²)) − atan2(C, A)',
  sources: [say.statics, say.linkGeometry, say.wholeAnkleRange],
  constants: systemConstants,
  cautions: [say.leanError, say.modelCaution, say.painCaution, say.loadCaution],
  notes: [
    'The arms stay at the trunk here, so a light bar often has no balanced posture at all; lifters put their arms or hips elsewhere then.',
    'Light bars ask for more lean than heavy ones: a bar sits higher than the body’s own centre, so a heavier one is balanced with less.',
    '"goblet" holds the weight before the chest, forearms with it; "arms-forward" is without a bar, arms held level, and body mass does not matter.',
    say.angleNote,
    say.minimumLeanNote,
    say.rangeUsedNote,
    say.twoRulesNote,
    say.stanceNote,
    say.weightBearingNote,
  ],
  examples: [
    { formula: '=LEAN.LOADED(80, 120, 42, 41, 51, 38)', gives: 35.2582 },
    {
      formula: '=LEAN.LOADED(80, 16, 42, 41, 51, 38, 0, 0, "goblet")',
      gives: 29.5902,
      says: 'a goblet squat with 16 kg',
    },
    {
      formula: '=LEAN.LOADED(80, 60, 42, 41, 51, 38, 0, 0, "arms-forward")',
      gives: '#VALUE!',
      says: 'arms held forward carry no bar',
    },
  ],
  seeAlso: ['LEAN.PARALLEL', 'LEAN.OFFSET', 'MOMENT.HIP', 'SEG.MASS'],
  typical: [80, 120, 42, 41, 51, 38, 1, 5, 'high-bar', 26, 10],
  directions: { bar: -1, femur: 1, tibia: -1, trunk: -1, ankle: -1, lift: -1, depth: -1, stance: -1 },
  clash: (_mass, bar, _femur, _tibia, _trunk, _ankle, _lift, _depth, placement) =>
    noBarWithArmsForward(placement, bar),
  compute: (mass, bar, femur, tibia, trunk, ankle, lift, depth, placement, foot, stance) => {
    const length = foot ?? defaultFoot(femur, tibia, trunk);
    setBalance(balance, carryOf(placement), mass, bar);
    const lean = leanOf(balance, femur, tibia, trunk, ankle, lift, depth, length, stance);
    return !Number.isNaN(lean)
      ? lean
      : whyNoPosture(balance, femur, tibia, trunk, ankle, lift, depth, length, stance);
  },
  steps: (mass, bar, femur, tibia, trunk, ankle, lift, depth, placement, foot, stance) =>
    leanSteps(
      setBalance(newBalance(), carryOf(placement), mass, bar),
      femur,
      tibia,
      trunk,
      ankle,
      lift,
      depth,
      placement,
      foot,
      stance,
    ),
});
