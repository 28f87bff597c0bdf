import { defineFunction } from '../core/define.ts';
import { hypot } from '../core/elementary/hypot.ts';
import { definition } from '../core/source.ts';
import { coordinate, scale, squareOn } from '../posture/picture.ts';

/** PHOTO.LENGTH: cm between two points. @throws nothing; one point gives 0. */
export default defineFunction({
  name: 'PHOTO.LENGTH',
  family: 'pictures',
  summary: 'Apparent length between two points on a picture.',
  searchWords: ['segment length', 'distance', 'femur on a photo', 'pixel'],
  parameters: [
    coordinate('x1', 'one end, to the right'),
    coordinate('y1', 'one end, down'),
    coordinate('x2', 'the other end, to the right'),
    coordinate('y2', 'the other end, down'),
    scale(),
  ],
  result: { is: 'number', unit: 'cm', about: 'apparent length' },
  rule: 'scale · distance of the points',
  sources: [definition('distance in the plane of the picture'), squareOn],
  cautions: [
    'A length that points out of the picture’s plane looks shorter than it is: a thigh turned out by 30° shows 87 % of itself. Measure segments with a tape.',
  ],
  examples: [
    { formula: '=PHOTO.LENGTH(620, 640, 452, 640, 0.25)', gives: 42, says: 'knee to hip' },
    { formula: '=PHOTO.LENGTH(0, 0, 30, 40, 0.5)', gives: 25 },
  ],
  seeAlso: ['PHOTO.SCALE', 'PHOTO.AHEAD'],
  typical: [620, 640, 452, 640, 0.25],
  directions: { scale: 1 },
  compute: (x1, y1, x2, y2, perUnit) => perUnit * hypot(x2 - x1, y2 - y1),
});
