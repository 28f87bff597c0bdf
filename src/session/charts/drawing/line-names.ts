import type * as Plot from '@observablehq/plot';
import type { ChartData, ChartPanel, ChartPoint } from '../data.ts';
import { classOf, colourOf, isCrowded } from './looks.ts';
import { dateOf, lineHeight } from './places.ts';

/** Width of a letter, px at 12 px. */
const letter = 6.3;
const longest = 16;

const cut = (name: string): string => (name.length > longest ? `${name.slice(0, longest - 1)}…` : name);

/** Names stand at the ends of lines where there are several lines and room for all names. */
export const namesFit = (data: ChartData, height: number): boolean =>
  data.kind === 'trend' &&
  data.panels.length === 1 &&
  data.groups.length > 1 &&
  data.groups.length * lineHeight < height - 70;

/** Room that the names need at the right. */
export const roomForNames = ({ groups }: ChartData): number =>
  24 + letter * Math.max(...groups.map((name) => Math.min(longest, name.length)));

/** The name of each line at its end, moved up or down where names would lie over each other, with a thread to the line. */
export function lineNames(data: ChartData, { points }: ChartPanel): Plot.Markish {
  const last = new Map<number, ChartPoint>();
  for (const point of points) {
    const before = last.get(point.group);
    if (!before || point.x >= before.x) last.set(point.group, point);
  }
  const crowded = isCrowded(data);
  return (_index, scales, _values, { width, height, marginRight, marginTop, marginBottom }, context) => {
    const [x, y] = [scales.x as (at: Date) => number, scales.y as (at: number) => number];
    const ends = [...last.values()]
      .map((point) => ({ point, from: [x(dateOf(point.x)), y(point.y)] as const }))
      .sort((a, b) => a.from[1] - b.from[1]);
    const at = spread(
      ends.map(({ from }) => from[1]),
      marginTop,
      height - marginBottom,
    );
    const sheet = context!.document;
    const make = (tag: string, attributes: Record<string, string | number>): SVGElement => {
      const element = sheet.createElementNS('http://www.w3.org/2000/svg', tag) as SVGElement;
      for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, String(value));
      return element;
    };
    const all = make('g', { 'data-mark': 'names', 'text-anchor': 'start' });
    const edge = width - marginRight;
    ends.forEach(({ point, from: [fromX, fromY] }, index) => {
      const to = at[index]!;
      all.appendChild(
        make('path', {
          d: `M${(fromX + 6).toFixed(1)},${fromY.toFixed(1)}L${(edge + 8).toFixed(1)},${to.toFixed(1)}h4`,
          fill: 'none',
          stroke: 'var(--rule-firm)',
          'stroke-width': 0.6,
        }),
      );
      const name = make('text', {
        x: edge + 15,
        y: to,
        dy: '0.32em',
        fill: crowded ? 'var(--ink)' : colourOf(point.group),
        class: classOf(point.group),
      });
      name.textContent = cut(data.groups[point.group] ?? '');
      all.appendChild(name);
    });
    return all as SVGGElement;
  };
}

/** Heights in the same order, none nearer to the next than a line, as near to the wished ones as a pass each way brings them. */
function spread(wished: readonly number[], top: number, bottom: number): readonly number[] {
  const at = [...wished];
  for (let i = 0; i < at.length; i++) at[i] = Math.max(at[i]!, i === 0 ? top : at[i - 1]! + lineHeight);
  for (let i = at.length - 1; i >= 0; i--)
    at[i] = Math.min(at[i]!, i === at.length - 1 ? bottom : at[i + 1]! - lineHeight);
  return at;
}
