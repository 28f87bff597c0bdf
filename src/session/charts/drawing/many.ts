import type { ChartPoint } from '../data.ts';
import { colourOf } from './looks.ts';

/** More points than this are drawn as strokes of a few paths: as an element each they would take too long. */
export const mostElements = 2000;

/** Paths a group's points are spread over. Where they lie over each other the paths add up, so that density shows. */
const layers = 8;

/** A line's end is round or square: the only shapes that many points have. */
export const isRound = (group: number): boolean => group % 2 === 0;

type Place = (point: ChartPoint) => readonly [x: number, y: number];

/** Many points as few paths: a line of no length with a round or square end is a dot. */
export function manyPoints(sheet: Document, points: readonly ChartPoint[], place: Place): SVGGElement {
  const space = 'http://www.w3.org/2000/svg';
  const paths = new Map<number, string[][]>();
  points.forEach((point, index) => {
    let of = paths.get(point.group);
    if (!of) {
      of = Array.from({ length: layers }, () => []);
      paths.set(point.group, of);
    }
    const [x, y] = place(point);
    of[index % layers]!.push(`M${x.toFixed(1)},${y.toFixed(1)}h0`);
  });
  const all = sheet.createElementNS(space, 'g');
  all.setAttribute('data-mark', 'dot');
  // Layer by layer, so that no group lies over all of another.
  for (let layer = 0; layer < layers; layer++)
    for (const [group, { [layer]: part = [] }] of paths) {
      if (part.length === 0) continue;
      const path = sheet.createElementNS(space, 'path');
      path.setAttribute('d', part.join(''));
      path.setAttribute('stroke', colourOf(group));
      path.setAttribute('stroke-width', points.length > 5000 ? '2.8' : '3.6');
      path.setAttribute('stroke-linecap', isRound(group) ? 'round' : 'square');
      path.setAttribute('opacity', '0.4');
      all.appendChild(path);
    }
  return all;
}
