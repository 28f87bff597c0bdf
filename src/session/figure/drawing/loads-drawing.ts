import type { Point, PostureFigure } from '../figure-answers.ts';
import { centimetres, whole } from './drawing-words.ts';
import { arc, type Frame, line, towards } from './geometry.ts';
import { el, type Shape } from './svg-shape.ts';

/** Degrees of arc for one N·m: a quarter turn is 200 N·m. */
export const DEGREES_PER_NM = 90 / 200;
const LONGEST = 330;

/**
 * The moments at hip and knee as arcs: as long as they are large, with a point on the side to which the joint must turn
 * to extend. The hip's stands behind it, the knee's ahead of it.
 */
export function moments(main: PostureFigure, frame: Frame): Shape | null {
  if (main.hipMoment === undefined || main.kneeMoment === undefined) return null;
  return el(
    'g',
    { class: 'moments' },
    moment(frame.at(main.hip), main.hipMoment, -90, 'hip'),
    moment(frame.at(main.knee), main.kneeMoment, 90, 'knee'),
  );
}

function moment(joint: Point, value: number, towardsSide: -90 | 90, name: string): Shape {
  const radius = 19;
  const half = Math.min(LONGEST, Math.abs(value) * DEGREES_PER_NM) / 2;
  // The arc ends below the joint for extension, above it for flexion.
  const way = Math.sign(value) * (towardsSide > 0 ? 1 : -1);
  const from = towardsSide - way * half;
  const to = towardsSide + way * half;
  const end = towards(joint, to, radius);
  const back = to - way * Math.min(26, half);
  const behind = towardsSide < 0;
  return el(
    'g',
    { class: `moment ${name}`, 'data-moment': value },
    el('path', { class: 'moment-arc', d: arc(joint, radius, from, to) }),
    el('path', {
      class: 'moment-point',
      d: `${line(towards(joint, back, radius - 5), end, towards(joint, back, radius + 5))}Z`,
    }),
    el(
      'text',
      {
        x: joint[0] + (behind ? -radius - 6 : radius + 6),
        y: joint[1] + (behind ? 18 : -8),
        'text-anchor': behind ? 'end' : 'start',
      },
      `${whole(value)} N·m`,
    ),
  );
}

/** The line of the total centre of mass, and the centre itself. */
export function centreLine(main: PostureFigure, frame: Frame): Shape | null {
  if (!main.centre || main.balanced === 'centre of mass') return null;
  const [x, y] = frame.at(main.centre);
  const floor = frame.y(0);
  const off = main.centre[0];
  const where =
    Math.abs(off) < 0.05 ? 'over mid-foot' : `${centimetres(Math.abs(off))} ${off > 0 ? 'ahead' : 'behind'}`;
  return el(
    'g',
    { class: 'centre', 'data-centre': off },
    el('path', { class: 'centre-line', d: line([x, y], [x, floor + 14]) }),
    el('circle', { cx: x, cy: y, r: 6 }),
    el('path', {
      class: 'centre-fill',
      d: `M${x} ${y}V${y - 6}A6 6 0 0 1 ${x + 6} ${y}ZM${x} ${y}V${y + 6}A6 6 0 0 1 ${x - 6} ${y}Z`,
    }),
    el('text', { x: frame.x(0), y: floor + 41, 'text-anchor': 'middle' }, `body and bar: ${where}`),
  );
}

/** How far the bar stays behind mid-foot in a posture that cannot be held. */
export function shortfall(main: PostureFigure, offset: number, frame: Frame): Shape {
  const [x, y] = frame.at(main.bar);
  const middle = frame.x(0);
  const level = y - 16;
  return el(
    'g',
    { class: 'shortfall', 'data-offset': offset },
    el('path', { d: line([x, y - 4], [x, level - 5]) }),
    el('path', { d: line([x, level], [middle, level]) }),
    el('path', { d: line([middle, level - 5], [middle, level + 5]) }),
    el(
      'text',
      { x: Math.min(x, middle) - 2, y: level - 8, 'text-anchor': 'start' },
      `${centimetres(Math.abs(offset))} ${offset < 0 ? 'behind' : 'ahead'}`,
    ),
  );
}

/** Within one SD of measuring error the trunk lies in this fan. */
export function fan(main: PostureFigure, error: number | null, radius: number, frame: Frame): Shape | null {
  if (error === null) return null;
  const hip = frame.at(main.hip);
  const from = towards(hip, main.lean - error, radius);
  return el(
    'g',
    { class: 'fan', 'data-error': error },
    el('path', {
      d: `${line(hip, from)}${arc(hip, radius, main.lean - error, main.lean + error).replace(/^M[^A]*/, '')}Z`,
    }),
  );
}
