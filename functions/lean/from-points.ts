import { defineFunction } from '../core/define.ts';
import { atan2 } from '../core/elementary/arc.ts';
import { issue } from '../core/issue.ts';
import { number } from '../core/parameter.ts';
import { definition } from '../core/source.ts';
import { RAD } from '../posture/angle.ts';
import * as say from '../tables/sources.ts';

const point = (name: string, about: string) => number(name, '', about);

/** LEAN.FROM.POINTS: deg from the vertical, 0–90, of a line between two points. @throws nothing; one point #DIV/0!. */
export default defineFunction({
  name: 'LEAN.FROM.POINTS',
  family: 'lean',
  summary: 'Trunk lean from two points digitised on a picture: hip and shoulder.',
  searchWords: ['video', 'photo', 'digitise', 'pixel', 'measure lean', 'kinematics'],
  parameters: [
    point('hip_x', 'hip, across'),
    point('hip_y', 'hip, up or down'),
    point('shoulder_x', 'shoulder, across'),
    point('shoulder_y', 'shoulder, up or down'),
  ],
  result: { is: 'number', unit: 'deg', about: 'angle of the line from the vertical, 0 to 90' },
  rule: 'atan2(|shoulder_x − hip_x|, |shoulder_y − hip_y|)',
  sources: [definition('angle of a line in the plane of the picture')],
  cautions: [
    'The picture must be taken square from the side, at hip height and level; a camera turned by 10° or a lens close by bends angles by degrees.',
  ],
  notes: ['Any unit will do, pixels too, as long as both axes have the same.', say.angleNote],
  examples: [
    { formula: '=LEAN.FROM.POINTS(0, 0, 30, 40)', gives: 36.8699 },
    {
      formula: '=LEAN.FROM.POINTS(412, 655, 530, 498)',
      gives: 36.9282,
      says: 'pixels, counted from the top',
    },
    { formula: '=LEAN.FROM.POINTS(5, 5, 5, 5)', gives: '#DIV/0!', says: 'one point has no direction' },
  ],
  seeAlso: ['JOINT.FROM.POINTS', 'LEAN.PARALLEL'],
  typical: [0, 0, 30, 40],
  directions: { shoulder_x: 1, shoulder_y: -1 },
  compute: (hipX, hipY, shoulderX, shoulderY) => {
    const across = Math.abs(shoulderX - hipX);
    const up = Math.abs(shoulderY - hipY);
    if (across === 0 && up === 0)
      return issue('#DIV/0!', 'points-coincide', {
        parameter: 'shoulder_x',
        received: shoulderX,
        details: { other: 'hip_x', x: hipX, y: hipY },
      });
    return atan2(across, up) / RAD;
  },
});
