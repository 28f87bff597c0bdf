import type * as Plot from '@observablehq/plot';
import type { ChartPanel, ChartPoint } from '../data.ts';

/** More names than this at points that stand out say nothing. */
const most = 24;
/** Size of a letter at 12 px, and how far a name stands from its point, px. */
const letter = 6.2;
const high = 12;
const away = 7;

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const meet = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/**
 * Whose the points are that stand out. A name stands right or left of its point, else above or below it; one that would
 * lie over another name is left to be read at the point.
 */
export function namesApart(
  { points }: ChartPanel,
  across: (point: ChartPoint) => number | Date,
): Plot.Markish | null {
  const named = points.filter(({ apart }) => apart);
  if (named.length === 0 || named.length > most) return null;
  return (_index, scales, _values, { width, marginRight, marginLeft }, context) => {
    const [x, y] = [scales.x as (at: number | Date) => number, scales.y as (at: number) => number];
    const { document: sheet } = context!;
    const space = 'http://www.w3.org/2000/svg';
    const all = sheet.createElementNS(space, 'g');
    const taken: Box[] = [];
    for (const point of named) {
      const [px, py] = [x(across(point)), y(point.y)];
      const wide = point.name.length * letter;
      const fits = (box: Box): boolean =>
        box.left >= marginLeft &&
        box.right <= width - marginRight + 14 &&
        !taken.some((one) => meet(one, box));
      const place = (left: number, middle: number): Box => ({
        left,
        right: left + wide,
        top: middle - high / 2,
        bottom: middle + high / 2,
      });
      const box = [
        place(px + away, py),
        place(px - away - wide, py),
        place(px - wide / 2, py - 13),
        place(px - wide / 2, py + 13),
      ].find(fits);
      if (!box) continue;
      taken.push(box);
      const text = sheet.createElementNS(space, 'text');
      for (const [name, value] of Object.entries({
        x: box.left.toFixed(1),
        y: ((box.top + box.bottom) / 2).toFixed(1),
        dy: '0.32em',
        'text-anchor': 'start',
        fill: 'var(--ink)',
        stroke: 'var(--sheet)',
        'stroke-width': 3,
        'paint-order': 'stroke',
      }))
        text.setAttribute(name, String(value));
      text.textContent = point.name;
      all.appendChild(text);
    }
    return all;
  };
}
