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

/** PHOTO.LEAN: deg from the vertical, above −180 to 180, forward positive. @throws nothing; one point #DIV/0!. */
export default defineFunction({
  name: 'PHOTO.LEAN',
  family: 'pictures',
  summary: 'Observed lean or shin angle: the line from a lower to an upper joint on a picture.',
  searchWords: ['video', 'photo', 'trunk angle', 'shin angle', 'shank angle', 'observed lean', 'digitise'],
  parameters: [
    coordinate('low_x', 'lower joint, to the right'),
    coordinate('low_y', 'lower joint, down'),
    coordinate('high_x', 'upper joint, to the right'),
    coordinate('high_y', 'upper joint, down'),
    facing(),
    level(),
  ],
  result: { is: 'number', unit: 'deg', about: 'angle from the vertical, forward positive' },
  rule: 'atan2(upper joint ahead of the lower, upper joint above the lower), picture turned back by level',
  sources: [definition('angle of a line in the plane of the picture'), squareOn],
  cautions: [sideOn],
  notes: [
    'Hip to shoulder gives the trunk’s lean, ankle to knee the shin angle.',
    'Picture coordinates run down: pixels as any program counts them. Upside down is 180.',
  ],
  examples: [
    { formula: '=PHOTO.LEAN(412, 655, 530, 498)', gives: 36.9282, says: 'hip, then shoulder, in pixels' },
    { formula: '=PHOTO.LEAN(412, 655, 530, 498, "left")', gives: -36.9282 },
    { formula: '=PHOTO.LEAN(412, 655, 530, 498, "right", 2)', gives: 34.9282, says: 'picture turned by 2°' },
    { formula: '=PHOTO.LEAN(5, 5, 5, 5)', gives: '#DIV/0!', says: 'one point has no direction' },
  ],
  seeAlso: ['PHOTO.DEPTH', 'PHOTO.LEVEL', 'PHOTO.ERROR', 'LEAN.PARALLEL'],
  typical: [412, 655, 530, 498, 'right', 0],
  directions: { level: -1 },
  compute: (lowX, lowY, highX, highY, looks, turned) => {
    if (lowX === highX && lowY === highY) return samePoint('high_x', 'low_x', highX, highY);
    const { ahead, up } = between(lowX, lowY, highX, highY, looks, turned);
    return angleOf(ahead, up);
  },
});
