import { defineFunction } from '../core/define.ts';
import { atan2 } from '../core/elementary/arc.ts';
import { number, numberOr } from '../core/parameter.ts';
import { definition } from '../core/source.ts';
import { RAD } from '../posture/angle.ts';

/** PHOTO.ERROR: deg, SD of an angle between two placed points. @throws nothing; length 0 #DIV/0!. */
export default defineFunction({
  name: 'PHOTO.ERROR',
  family: 'pictures',
  summary: 'Error of an angle read off a picture, from how exactly its two points are placed.',
  searchWords: ['digitising error', 'SD of an angle', 'precision', 'pixel error'],
  parameters: [
    number('length', '', 'distance of the two points on the picture', {
      bounds: { min: 0, because: 'A distance has no sign.' },
      anyUnit: true,
      divisor: true,
    }),
    numberOr(1, 'point', '', 'SD with which each point is placed, in the same unit', {
      bounds: { min: 0, because: 'An SD has no sign.' },
      anyUnit: true,
    }),
  ],
  result: { is: 'number', unit: 'deg', about: 'SD of the angle' },
  rule: 'atan(√2 · point / length)',
  sources: [definition('propagation of independent errors across a line of that length')],
  cautions: [
    'Placing only: where a joint is under clothes, and how the camera is turned, come on top. Digitise again to see your own error.',
  ],
  examples: [
    { formula: '=PHOTO.ERROR(200, 3)', gives: 1.2152, says: 'points placed to 3 pixels, 200 pixels apart' },
    { formula: '=PHOTO.ERROR(0)', gives: '#DIV/0!' },
  ],
  seeAlso: ['PHOTO.LEAN', 'TEST.SEM.TRIALS'],
  typical: [200, 3],
  directions: { length: -1, point: 1 },
  compute: (length, point) => atan2(Math.SQRT2 * point, length) / RAD,
});
