import type { Point } from '../figure-answers.ts';

/** Maps centimetres of the model onto the drawing, one scale both ways; y of the drawing runs down. */
export interface Frame {
  readonly scale: number;
  x(cm: number): number;
  y(cm: number): number;
  at(point: Point): Point;
}

export interface Extent {
  readonly left: number;
  readonly right: number;
  readonly top: number;
}

/** A frame that holds the extent (cm, floor at 0) in a drawing of that size, margins kept. */
export function frameFor(
  extent: Extent,
  width: number,
  height: number,
  margin: { left: number; right: number; top: number; bottom: number },
): Frame {
  const scale = Math.min(
    (width - margin.left - margin.right) / (extent.right - extent.left),
    (height - margin.top - margin.bottom) / extent.top,
  );
  const spare = width - margin.left - margin.right - scale * (extent.right - extent.left);
  const x = (cm: number) => margin.left + spare / 2 + (cm - extent.left) * scale;
  const y = (cm: number) => height - margin.bottom - cm * scale;
  return { scale, x, y, at: ([cx, cy]) => [x(cx), y(cy)] };
}

const n = (value: number): string => (Math.round(value * 100) / 100).toString();

const spot = ([x, y]: Point): string => `${n(x)} ${n(y)}`;

export const line = (...points: readonly Point[]): string =>
  points.map((point, index) => `${index ? 'L' : 'M'}${spot(point)}`).join('');

/** Outline of a limb: two circles and their outer tangents. Radii in drawing units. */
export function limb(a: Point, ra: number, b: Point, rb: number): string {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const length = Math.hypot(dx, dy);
  if (length <= Math.abs(ra - rb)) return '';
  const along = Math.atan2(dy, dx);
  const open = Math.acos((ra - rb) / length);
  const on = (c: Point, r: number, angle: number): Point => [
    c[0] + r * Math.cos(angle),
    c[1] + r * Math.sin(angle),
  ];
  const a1 = on(a, ra, along + open);
  const a2 = on(a, ra, along - open);
  const b1 = on(b, rb, along + open);
  const b2 = on(b, rb, along - open);
  return `M${spot(a1)}A${n(ra)} ${n(ra)} 0 ${ra > rb ? 1 : 0} 1 ${spot(a2)}L${spot(b2)}A${n(rb)} ${n(rb)} 0 ${rb > ra ? 1 : 0} 1 ${spot(b1)}Z`;
}

/** Arc about a centre from one direction to another, both in degrees from the vertical, forward positive. */
export function arc(centre: Point, radius: number, from: number, to: number): string {
  const on = (degrees: number): Point => [
    centre[0] + radius * Math.sin((degrees * Math.PI) / 180),
    centre[1] - radius * Math.cos((degrees * Math.PI) / 180),
  ];
  const large = Math.abs(to - from) > 180 ? 1 : 0;
  return `M${spot(on(from))}A${n(radius)} ${n(radius)} 0 ${large} ${to > from ? 1 : 0} ${spot(on(to))}`;
}

/** The point at a distance from `from` in a direction given in degrees from the vertical, forward positive. */
export function towards(from: Point, degrees: number, distance: number): Point {
  const angle = (degrees * Math.PI) / 180;
  return [from[0] + distance * Math.sin(angle), from[1] - distance * Math.cos(angle)];
}

/** A closed smooth outline through the points: a Catmull–Rom spline as cubic Bézier pieces. */
export function blob(points: readonly Point[]): string {
  const at = (index: number): Point => points[(index + points.length) % points.length]!;
  const pieces = points.map((_, i) => {
    const [before, from, to, after] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
    const first: Point = [from[0] + (to[0] - before[0]) / 6, from[1] + (to[1] - before[1]) / 6];
    const second: Point = [to[0] - (after[0] - from[0]) / 6, to[1] - (after[1] - from[1]) / 6];
    return `C${spot(first)} ${spot(second)} ${spot(to)}`;
  });
  return `M${spot(at(0))}${pieces.join('')}Z`;
}

/**
 * Where the elbow is when shoulder and hand are given: the two lengths are kept where they reach, stretched evenly where
 * the hand is farther. It hangs below the line from shoulder to hand.
 */
export function elbow(shoulder: Point, hand: Point, upper: number, fore: number): Point {
  const [dx, dy] = [hand[0] - shoulder[0], hand[1] - shoulder[1]];
  const distance = Math.max(Math.hypot(dx, dy), 1e-6);
  const reached = Math.min(distance, upper + fore);
  const along = (upper * upper - fore * fore + reached * reached) / (2 * reached);
  const share = distance > upper + fore ? (distance * upper) / (upper + fore) : along;
  const aside = Math.sqrt(Math.max(0, upper * upper - along * along));
  const [ux, uy] = [dx / distance, dy / distance];
  const sides: readonly Point[] = [
    [shoulder[0] + ux * share - uy * aside, shoulder[1] + uy * share + ux * aside],
    [shoulder[0] + ux * share + uy * aside, shoulder[1] + uy * share - ux * aside],
  ];
  return sides[0]![1] > sides[1]![1] ? sides[0]! : sides[1]!;
}
