import { defineFunction } from '../core/define.ts';
import { definition } from '../core/source.ts';
import {
  angleOf,
  between,
  coordinate,
  facing,
  level,
  samePoint,
  sideOn,
  squareOn,
} from '../posture/picture.ts';

/** PHOTO.DEPTH: deg of the thigh above (+) or below (−) level, above −180 to 180. @throws nothing; one point #DIV/0!. */
export default defineFunction({
  name: 'PHOTO.DEPTH',
  family: 'pictures',
  summary: 'Observed depth: how far the thigh is above or below parallel on a picture.',
  searchWords: ['video', 'photo', 'thigh angle', 'parallel', 'hip crease', 'digitise'],
  parameters: [
    coordinate('knee_x', 'knee joint, to the right'),
    coordinate('knee_y', 'knee joint, down'),
    coordinate('hip_x', 'hip joint, to the right'),
    coordinate('hip_y', 'hip joint, down'),
    facing(),
    level(),
  ],
  result: { is: 'number', unit: 'deg', about: 'thigh above (+) or below (−) parallel' },
  rule: 'atan2(height of the hip over the knee, distance of the hip behind the knee), picture turned back by level',
  sources: [definition('angle of a line in the plane of the picture'), squareOn],
  cautions: [sideOn],
  notes: [
    'Joint centres, not the crease of the hip or the top of the knee that meet rules go by: the two differ by several degrees.',
  ],
  examples: [
    { formula: '=PHOTO.DEPTH(620, 640, 420, 640)', gives: 0, says: 'hip level with the knee' },
    { formula: '=PHOTO.DEPTH(620, 640, 420, 675)', gives: -9.9262, says: 'below parallel' },
    { formula: '=PHOTO.DEPTH(420, 640, 620, 605, "left")', gives: 9.9262 },
  ],
  seeAlso: ['PHOTO.LEAN', 'PHOTO.LEVEL', 'LEAN.AT'],
  typical: [620, 640, 420, 675, 'right', 0],
  directions: { hip_y: -1 },
  compute: (kneeX, kneeY, hipX, hipY, looks, turned) => {
    if (kneeX === hipX && kneeY === hipY) return samePoint('hip_x', 'knee_x', hipX, hipY);
    const { ahead, up } = between(kneeX, kneeY, hipX, hipY, looks, turned);
    return angleOf(up, ahead === 0 ? 0 : -ahead);
  },
});
