import { defineFunction } from '../core/define.ts';
import { definition } from '../core/source.ts';
import { between, coordinate, facing, level, scale, sideOn, squareOn } from '../posture/picture.ts';

/** PHOTO.AHEAD: cm, level, positive where the lifter looks. @throws nothing. */
export default defineFunction({
  name: 'PHOTO.AHEAD',
  family: 'pictures',
  summary: 'How far one point is ahead of another on a picture, level.',
  searchWords: ['bar path', 'over mid-foot', 'horizontal distance', 'video', 'photo'],
  parameters: [
    coordinate('x', 'the point, to the right'),
    coordinate('y', 'the point, down'),
    coordinate('from_x', 'where to measure from, to the right'),
    coordinate('from_y', 'where to measure from, down'),
    scale(),
    facing(),
    level(),
  ],
  result: { is: 'number', unit: 'cm', about: 'ahead (+) or behind (−)' },
  rule: 'scale · level distance where the lifter looks, picture turned back by level',
  sources: [definition('distance in the plane of the picture'), squareOn],
  cautions: [sideOn],
  notes: ['Bar over mid-foot: the bar’s centre against the middle between heel and toe.'],
  examples: [
    { formula: '=PHOTO.AHEAD(540, 300, 500, 820, 0.25)', gives: 10 },
    { formula: '=PHOTO.AHEAD(540, 300, 500, 820, 0.25, "left")', gives: -10 },
  ],
  seeAlso: ['PHOTO.SCALE', 'PHOTO.LENGTH', 'LEAN.OFFSET'],
  typical: [540, 300, 500, 820, 0.25, 'right', 0],
  directions: { x: 1, from_x: -1 },
  compute: (x, y, fromX, fromY, perUnit, looks, turned) => {
    const { ahead } = between(fromX, fromY, x, y, looks, turned);
    return perUnit * ahead;
  },
});
