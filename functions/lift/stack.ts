import { defineFunction } from '../core/define.ts';
import { issue } from '../core/issue.ts';
import { number, numberOr } from '../core/parameter.ts';
import { definition } from '../core/source.ts';
import { sin } from '../posture/angle.ts';
import { leverOf, pitchOf } from '../posture/leg.ts';
import { shown, step } from '../posture/steps.ts';
import { liftTooHigh } from '../posture/why.ts';
import { ballAlongFoot } from '../tables/foot.ts';
import { foot, heel } from '../tables/parameters.ts';
import * as say from '../tables/sources.ts';

/** LIFT.STACK(drop, foot, [board]): heel lift, cm, of a shoe on a wedge. @throws nothing; more than a lift may be #NUM!. */
export default defineFunction({
  name: 'LIFT.STACK',
  family: 'lift',
  summary: 'Shoe worn on a wedge: what both come to as one heel lift.',
  searchWords: ['shoe on a wedge', 'shoe and slant board', 'combined lift', 'weightlifting shoe'],
  parameters: [
    number('drop', 'cm', 'heel above the ball of the foot in the shoe, as LIFT.NET gives it', {
      bounds: heel,
    }),
    foot(),
    numberOr(0, 'board', 'deg', 'angle of the wedge under the shoe, as LIFT.BOARD gives it', {
      bounds: { min: 0, max: 45, because: 'No foot stays on a steeper wedge.' },
    }),
  ],
  result: { is: 'number', unit: 'cm', about: 'heel above the ball of the foot; for "lift" of LEAN.AT' },
  rule: '.740 foot × sin(asin(drop / (.740 foot)) + board)',
  sources: [say.linkGeometry, definition('two turns of the foot about the ball add up')],
  constants: [ballAlongFoot],
  cautions: [
    say.liftCaution,
    'A wedge must be firm, non-slip and support the whole heel; change one thing at a time and stop if the knee hurts.',
  ],
  notes: [
    'A foot that is wholly on a wedge is pitched by the wedge’s angle, like a foot with its heel raised.',
    say.ceilingNote,
    say.liftStudiesNote,
  ],
  examples: [
    { formula: '=LIFT.STACK(2, 27)', gives: 2, says: 'the shoe alone' },
    { formula: '=LIFT.STACK(2, 27, 10)', gives: 5.42168 },
    { formula: '=LIFT.STACK(0, 27, 10)', gives: 3.46949, says: 'the wedge alone' },
  ],
  seeAlso: ['LIFT.NET', 'LIFT.BOARD', 'LIFT.PITCH', 'LIFT.CHANGE'],
  typical: [2, 27, 10],
  directions: { drop: 1, foot: 1, board: 1 },
  compute: (drop, foot, board) => {
    const shoe = pitchOf(drop, foot);
    if (Number.isNaN(shoe)) return { ...liftTooHigh(drop, foot)!, parameter: 'drop' };
    const lever = leverOf(foot);
    const pitch = shoe + board;
    const lift = board === 0 ? drop : lever * sin(pitch);
    return pitch < 90 && lift <= heel.max && lift < lever
      ? lift
      : issue('#NUM!', 'stack-too-high', {
          parameter: 'board',
          received: board,
          unit: 'deg',
          details: { pitch, lift, most: Math.min(heel.max, lever) },
        });
  },
  steps: (drop, foot, board) => {
    const pitch = pitchOf(drop, foot) + board;
    return [
      step('Heel to ball', 'b', '.740 foot', leverOf(foot), 'cm', [ballAlongFoot]),
      step('Pitch of the foot', 'φ', 'asin(drop / b) + board', shown(pitch), 'deg'),
      step('Heel lift', '', 'b sinφ', shown(board === 0 ? drop : leverOf(foot) * sin(pitch)), 'cm'),
    ];
  },
});
