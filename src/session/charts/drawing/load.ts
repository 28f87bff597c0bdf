/** Draws the weekly load with its monotony. */
import * as Plot from '@observablehq/plot';
import { el, type Shape } from '../../figure/drawing/svg-shape.ts';
import type { ChartData, ChartPanel, ChartPoint } from '../data.ts';
import { type Axes, type Drawn, dateOf, type Size, spansOf, week } from './places.ts';
import { blankSheet, sketchedShape } from './sketch.ts';

const from = ({ x }: ChartPoint): Date => dateOf(x);
const middle = ({ x }: ChartPoint): Date => new Date(dateOf(x).getTime() + week / 2);
const to = ({ x }: ChartPoint): Date => new Date(dateOf(x).getTime() + week);

/** Share of the height that the weekly sums take; the monotony of the same weeks stands below them. */
const share = 0.64;

/** Weekly sums as bars, and under them, week by week on the same axis, the monotony of each. */
export function drawLoad(data: ChartData, panel: ChartPanel, size: Size, axes: Axes): Drawn {
  const named = axes === 'named';
  const { x, y } = spansOf(data);
  const upper = Math.round(size.height * share);
  const lower = size.height - upper;
  const most = Math.max(1, ...data.panels.flatMap(({ points }) => points.map(({ beside = 0 }) => beside)));
  const top = (panel.title ? 24 : 8) + (named ? 18 : 0);
  const common = {
    width: size.width,
    marginLeft: 50,
    marginRight: 20,
    className: 'chart-svg',
    color: { type: 'identity' as const },
  };
  const days = { type: 'utc' as const, domain: x.map(dateOf) };
  const scale = (label: string, domain: [number, number], ticks: number) => ({
    label: named ? label : null,
    labelArrow: 'none' as const,
    domain,
    nice: true,
    grid: true,
    ticks,
  });
  const bars = Plot.plot({
    ...common,
    document: blankSheet(),
    height: upper,
    marginTop: top,
    marginBottom: 6,
    ariaLabel: data.y.label,
    x: { ...days, axis: null },
    y: scale(data.y.label, y, Math.max(3, Math.round(upper / 48))),
    marks: [
      panel.title
        ? Plot.text([panel.title], {
            frameAnchor: 'top-left',
            dx: -46,
            dy: 4 - top,
            fontWeight: 600,
            fill: 'var(--ink)',
          })
        : null,
      Plot.rectY(panel.points, { x1: from, x2: to, y: 'y', fill: 'var(--chart-1)', inset: 0.5 }),
      Plot.ruleY([0], { stroke: 'var(--ink)' }),
    ],
  }) as (SVGSVGElement | HTMLElement) & Plot.Plot;
  const known = panel.points.filter(({ beside }) => beside !== undefined);
  const monotony = Plot.plot({
    ...common,
    document: blankSheet(),
    height: lower,
    marginTop: named ? 26 : 8,
    marginBottom: named ? 44 : 26,
    ariaLabel: data.beside?.label ?? '',
    x: {
      ...days,
      label: named ? data.x.label : null,
      labelAnchor: 'center',
      labelArrow: 'none',
      ticks: Math.max(2, Math.round((size.width - 70) / 80)),
    },
    y: scale(data.beside?.label ?? '', [0, most], 2),
    marks: [
      Plot.ruleX(known, { x: middle, y1: 0, y2: 'beside', stroke: 'var(--chart-2)', strokeWidth: 1 }),
      Plot.dot(known, { x: middle, y: 'beside', r: 2.2, fill: 'var(--chart-2)' }),
      Plot.ruleY([0], { stroke: 'var(--ink)' }),
    ],
  });
  const [scaleX, scaleY] = [bars.scale('x')!, bars.scale('y')!];
  const { width, height } = size;
  return {
    ...size,
    shape: el(
      'svg',
      {
        class: 'chart-svg',
        width,
        height,
        viewBox: `0 0 ${width} ${height}`,
        role: 'img',
        'aria-label': panel.title || data.title,
      },
      part(sketchedShape(bars), 0),
      part(sketchedShape(monotony), upper),
    ),
    at: (point) => [scaleX.apply(middle(point)) as number, scaleY.apply(point.y) as number],
  };
}

/** A part of the drawing in its place; the whole has the name. */
function part(shape: Shape, y: number): Shape {
  const { role: _role, 'aria-label': _name, ...rest } = shape.attributes;
  return { ...shape, attributes: { ...rest, y } };
}
