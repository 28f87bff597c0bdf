import { defineFunction } from '../core/define.ts';
import { hypot } from '../core/elementary/hypot.ts';
import { issue } from '../core/issue.ts';
import { number, numberMaybe, numberOr } from '../core/parameter.ts';
import { definition, published } from '../core/source.ts';
import { coordinate, samePoint } from '../posture/picture.ts';

/** PHOTO.SCALE: cm for one unit of the picture. @throws nothing; nearer without camera #N/A, one point #DIV/0!. */
export default defineFunction({
  name: 'PHOTO.SCALE',
  family: 'pictures',
  summary: 'Centimetres for one unit of a picture, from a length that shows on it.',
  searchWords: ['pixel', 'calibrate', 'reference length', 'plate', 'perspective', 'camera distance'],
  parameters: [
    coordinate('x1', 'one end of the known length, to the right'),
    coordinate('y1', 'one end of the known length, down'),
    coordinate('x2', 'its other end, to the right'),
    coordinate('y2', 'its other end, down'),
    number('length', 'cm', 'the known length', {
      bounds: { above: 0, max: 500, because: 'A length beside a lifter is no longer than the platform.' },
    }),
    numberMaybe('camera', 'cm', 'from the camera to the plane of the joints', {
      bounds: { min: 50, max: 5000, because: 'Nearer than half a metre no lifter fits the picture.' },
    }),
    numberOr(0, 'nearer', 'cm', 'how much nearer to the camera the known length is than the joints', {
      bounds: {
        min: -300,
        max: 300,
        because: 'The known length is beside the lifter; below 0 it is farther.',
      },
    }),
  ],
  result: {
    is: 'number',
    unit: 'cm',
    about: 'length in the plane of the joints for one unit of the picture',
  },
  rule: 'length / distance of the points · camera / (camera − nearer)',
  sources: [
    definition('similar triangles of a pinhole camera'),
    published('diameter of the largest disc 45.0 cm: technical rules of the lifting federations'),
  ],
  cautions: [
    'A plate on the near end of the bar is about 70 cm nearer than the joints: uncorrected, lengths read 23 % too small at 3 m and 12 % at 6 m. Angles are not affected.',
  ],
  examples: [
    {
      formula: '=PHOTO.SCALE(300, 400, 480, 400, 45)',
      gives: 0.25,
      says: 'a plate in the joints’ own plane',
    },
    {
      formula: '=PHOTO.SCALE(300, 400, 480, 400, 45, 300, 70)',
      gives: 0.326087,
      says: 'the plate 70 cm nearer, camera 3 m away',
    },
    { formula: '=PHOTO.SCALE(300, 400, 480, 400, 45, , 70)', gives: '#N/A', says: 'no camera distance' },
  ],
  seeAlso: ['PHOTO.LENGTH', 'PHOTO.AHEAD'],
  typical: [300, 400, 480, 400, 45, 300, 70],
  directions: { length: 1, nearer: 1 },
  compute: (x1, y1, x2, y2, length, camera, nearer) => {
    if (camera !== undefined && nearer >= camera)
      return issue('#NUM!', 'nearer-than-camera', {
        parameter: 'nearer',
        received: nearer,
        details: { camera },
      });
    if (camera === undefined && nearer !== 0)
      return issue('#N/A', 'nearer-without-camera', { parameter: 'camera', details: { nearer } });
    if (x1 === x2 && y1 === y2) return samePoint('x2', 'x1', x2, y2);
    return (length / hypot(x2 - x1, y2 - y1)) * (camera === undefined ? 1 : camera / (camera - nearer));
  },
});
