import { defineFunction } from '../core/define.ts';
import { atan2 } from '../core/elementary/arc.ts';
import { issue } from '../core/issue.ts';
import { number } from '../core/parameter.ts';
import { definition } from '../core/source.ts';
import { RAD } from '../posture/angle.ts';

/** JOINT.FROM.POINTS: deg, the angle at b, 0–180. @throws nothing; a point that coincides with b gives #DIV/0!. */
export default defineFunction({
  name: 'JOINT.FROM.POINTS',
  family: 'lean',
  summary: 'Angle at a joint from three points digitised on a picture.',
  searchWords: ['joint angle', 'knee angle', 'video', 'photo', 'digitise', 'kinematics'],
  parameters: [
    number('ax', '', 'first point, across'),
    number('ay', '', 'first point, up or down'),
    number('bx', '', 'the joint, across'),
    number('by', '', 'the joint, up or down'),
    number('cx', '', 'third point, across'),
    number('cy', '', 'third point, up or down'),
  ],
  result: { is: 'number', unit: 'deg', about: 'angle at b, 0 to 180' },
  rule: 'angle between the lines from b to a and from b to c',
  sources: [definition('angle between two lines in the plane of the picture')],
  cautions: [
    'The picture must be taken square from the side, at the joint’s height and level; points out of its plane give wrong angles.',
  ],
  notes: ['An internal angle: a straight joint has 180, and flexion is 180 less this angle.'],
  examples: [
    { formula: '=JOINT.FROM.POINTS(0, 1, 0, 0, 1, 0)', gives: 90 },
    { formula: '=JOINT.FROM.POINTS(35, 62, 60, 55, 48, 12)', gives: 90.0494, says: 'hip, knee and ankle' },
    { formula: '=JOINT.FROM.POINTS(1, 1, 1, 1, 3, 0)', gives: '#DIV/0!', says: 'two of the points are one' },
  ],
  seeAlso: ['LEAN.FROM.POINTS', 'LEAN.KNEE', 'LEAN.HIP'],
  typical: [35, 62, 60, 55, 48, 12],
  compute: (ax, ay, bx, by, cx, cy) => {
    const [ux, uy, vx, vy] = [ax - bx, ay - by, cx - bx, cy - by];
    const first = ux === 0 && uy === 0;
    if (first || (vx === 0 && vy === 0))
      return issue('#DIV/0!', 'points-coincide', {
        parameter: first ? 'ax' : 'cx',
        received: bx,
        details: { other: 'bx', x: bx, y: by },
      });
    return atan2(Math.abs(ux * vy - uy * vx), ux * vx + uy * vy) / RAD;
  },
});
