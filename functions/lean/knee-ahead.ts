import { defineFunction } from '../core/define.ts';
import { sin } from '../posture/angle.ts';
import { ankleFromHeel, pitchOf } from '../posture/leg.ts';
import { pitchSteps, shown, step } from '../posture/steps.ts';
import { liftTooHigh } from '../posture/why.ts';
import { ankleAboveSole, ankleAlongFoot, ballAlongFoot } from '../tables/foot.ts';
import { foot, liftOr, shank, tibia } from '../tables/parameters.ts';
import * as say from '../tables/sources.ts';

/** LEAN.KNEE.AHEAD: cm the knee is ahead (+) of the toe tip. @throws nothing; a lift past the ball gives #NUM!. */
export default defineFunction({
  name: 'LEAN.KNEE.AHEAD',
  family: 'lean',
  summary: 'How far the knee is ahead (+) or behind (−) of the toe tip.',
  searchWords: ['knees over toes', 'knee travel', 'toe line'],
  parameters: [tibia(), shank(), foot(), liftOr()],
  result: { is: 'number', unit: 'cm', about: 'knee’s axis ahead of the toe tip' },
  rule: 'x_ankle + tibia × sin shank − foot, x_ankle from the flat heel',
  sources: [say.linkGeometry],
  constants: [ballAlongFoot, ankleAlongFoot, ankleAboveSole],
  cautions: [say.modelCaution],
  notes: ['Knees ahead of the toes are not a fault in themselves.', say.angleNote],
  examples: [
    { formula: '=LEAN.KNEE.AHEAD(41, 38, 27)', gives: 4.99212 },
    { formula: '=LEAN.KNEE.AHEAD(41, 42, 27, 2)', gives: 7.94426, says: 'heel lifted by 2 cm' },
  ],
  seeAlso: ['LEAN.SHANK', 'LEAN.KNEE', 'ANKLE.TO.WALL'],
  typical: [41, 38, 27, 1],
  directions: { tibia: 1, shank: 1, foot: -1, lift: 1 },
  compute: (tibia, shank, foot, lift) => {
    const pitch = pitchOf(lift, foot);
    if (Number.isNaN(pitch)) return liftTooHigh(lift, foot)!;
    return ankleFromHeel(foot, pitch) + tibia * sin(shank) - foot;
  },
  steps: (tibia, shank, foot, lift) => {
    const ankle = ankleFromHeel(foot, pitchOf(lift, foot));
    return [
      ...pitchSteps(lift, foot),
      step(
        'Ankle joint ahead of the flat heel',
        'x_A',
        '.740 L + (.25 − .740) L cosφ + (.039/.152) L sinφ',
        shown(ankle),
        'cm',
        [ballAlongFoot, ankleAlongFoot, ankleAboveSole],
      ),
      step(
        'Knee ahead of the toe tip',
        'x',
        'x_A + tibia sinσ − L',
        shown(ankle + tibia * sin(shank) - foot),
        'cm',
      ),
    ];
  },
});
