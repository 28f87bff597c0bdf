import { el, type Shape } from '../../figure/drawing/svg-shape.ts';
import type { ChartData } from '../data.ts';
import { partLooks } from './lean-part-looks.ts';
import { namesFit } from './line-names.ts';
import { colourOf, isCrowded, shapeIndexOf } from './looks.ts';
import { isRound, mostElements } from './many.ts';

/** Marks like those of the chart, 12 × 12. */
const marks = [
  'M6 1.5a4.500 4.500 0 1 0 0 9 4.500 4.500 0 0 0 0-9z',
  'M6 1 11 10H1z',
  'M2 2h8v8H2z',
  'M6 .5 11.500 6 6 11.500.5 6z',
  'M4 1h4v3h3v4H8v3H4V8H1V4h3z',
  'M4.500 6.500V11h3V6.500L11 4 9.500 1.500 6 4 2.500 1.500 1 4z',
];
/** More groups than this are read point by point. */
const mostShown = 24;

/** What colours, shapes, lines and areas of a chart mean; null where nothing needs saying. */
export function legendOf(data: ChartData, height: number): Shape | null {
  const entries = [...groupEntries(data, height), ...partEntries(data)];
  return entries.length === 0 ? null : el('ul', { class: 'chart-legend', 'aria-label': 'Legend' }, entries);
}

function groupEntries(data: ChartData, height: number): readonly Shape[] {
  const { groups, x, panels } = data;
  if (data.kind === 'lean-parts') {
    const parts = panels[0]?.bars?.[0]?.parts ?? [];
    return parts.map(({ part, label }) => {
      const [colour, sign] = partLooks[part];
      return entry(`${sign} ${label}`, 12, el('rect', { x: 1, y: 1, width: 10, height: 10, fill: colour }));
    });
  }
  if (groups.length < 2 || x.is === 'groups' || panels.length > 1) return [];
  if (namesFit(data, height) || isCrowded(data)) return [];
  const drawn = new Set(panels.flatMap(({ points }) => points.map(({ group }) => group)));
  const named = groups.map((name, group) => ({ name, group })).filter(({ group }) => drawn.has(group));
  const more = named.length - mostShown;
  const many = panels.some(({ points }) => points.length > mostElements);
  const shape = (group: number): number => (many ? (isRound(group) ? 0 : 2) : shapeIndexOf(group));
  return [
    ...named
      .slice(0, mostShown)
      .map(({ name, group }) =>
        entry(name, 12, el('path', { d: marks[shape(group)], fill: colourOf(group) })),
      ),
    ...(more > 0 ? [el('li', {}, `and ${more} more`)] : []),
  ];
}

/** Lines and areas, in the order in which they are drawn. */
function partEntries({ panels }: ChartData): readonly Shape[] {
  const has = (is: string): boolean =>
    panels.some(({ bands, lines }) => [...bands, ...lines].some((one) => one.is === is));
  const area = el('rect', { x: 0, y: 1, width: 24, height: 10, fill: 'var(--chart-band)' });
  const line = (dashes?: string): Shape =>
    el('path', { d: 'M0 6h24', stroke: 'var(--ink)', 'stroke-width': 1.4, 'stroke-dasharray': dashes });
  return [
    has('prediction') && entry('95 % prediction interval', 24, area),
    has('real change') && entry('may be measuring error', 24, area),
    has('fit') && entry('least-squares line', 24, line()),
    has('equal') && entry('no difference', 24, line('2 3')),
    has('mid-foot') && entry('mid-foot', 24, line('2 3')),
  ].filter((one) => one !== false);
}

const entry = (words: string, width: number, mark: Shape): Shape =>
  el(
    'li',
    {},
    el(
      'svg',
      { viewBox: `0 0 ${width} 12`, width, height: 12, class: 'chart-mark', 'aria-hidden': 'true' },
      mark,
    ),
    words,
  );
