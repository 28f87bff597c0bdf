import { defineFunction } from '../core/define.ts';
import { issue } from '../core/issue.ts';
import { optionOr } from '../core/parameter.ts';
import { definition } from '../core/source.ts';
import { angleOf, coordinate, samePoint, squareOn } from '../posture/picture.ts';

/** PHOTO.LEVEL: deg, clockwise positive, −45 to 45. @throws nothing; one point #DIV/0!, more than 45 #NUM!. */
export default defineFunction({
  name: 'PHOTO.LEVEL',
  family: 'pictures',
  summary: 'How far a picture is turned, from a line that is level or upright in the gym.',
  searchWords: ['horizon', 'tilt', 'roll', 'plumb line', 'level', 'rotate', 'camera'],
  parameters: [
    coordinate('x1', 'first point of the line, to the right'),
    coordinate('y1', 'first point of the line, down'),
    coordinate('x2', 'second point of the line, to the right'),
    coordinate('y2', 'second point of the line, down'),
    optionOr('floor', 'line', ['floor', 'plumb'], 'a line that is level ("floor") or upright ("plumb")'),
  ],
  result: { is: 'number', unit: 'deg', about: 'how far the picture is turned, clockwise positive' },
  rule: 'floor: angle of the line to the picture’s lower edge; plumb: angle to its side',
  sources: [definition('angle of a line in the plane of the picture'), squareOn],
  cautions: [
    'Every degree that goes uncorrected goes into the lean one for one. Choose the longest line that shows.',
  ],
  notes: ['The two points may be in either order. A line more than 45° off is refused.'],
  examples: [
    { formula: '=PHOTO.LEVEL(100, 800, 900, 814)', gives: 1.0025738, says: 'the floor drops to the right' },
    { formula: '=PHOTO.LEVEL(500, 100, 486, 900, "plumb")', gives: 1.0025738 },
    { formula: '=PHOTO.LEVEL(0, 0, 10, 300)', gives: '#NUM!', says: 'an upright line taken for the floor' },
  ],
  seeAlso: ['PHOTO.LEAN', 'PHOTO.DEPTH', 'PHOTO.AHEAD'],
  typical: [100, 800, 900, 814, 'floor'],
  compute: (x1, y1, x2, y2, line) => {
    const [dx, dy] = [x2 - x1, y2 - y1];
    if (dx === 0 && dy === 0) return samePoint('x2', 'x1', x2, y2);
    const turned = line === 'floor' ? angleOf(dy, dx) : angleOf(-dx, dy);
    const nearest = turned > 90 ? turned - 180 : turned <= -90 ? turned + 180 : turned;
    return Math.abs(nearest) > 45
      ? issue('#NUM!', 'line-too-steep', {
          parameter: 'line',
          received: line,
          details: { turned: nearest, other: line === 'floor' ? 'plumb' : 'floor' },
        })
      : nearest;
  },
});
