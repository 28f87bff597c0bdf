/** Draws the lean of observed squats, part by part. */
import * as Plot from '@observablehq/plot';
import type { ChartBar, ChartData, ChartPanel } from '../data.ts';
import { around, partLooks } from './lean-part-looks.ts';
import type { Axes, Drawn, Size } from './places.ts';
import { blankSheet, sketchedShape } from './sketch.ts';

interface Segment {
  readonly at: number;
  readonly from: number;
  readonly to: number;
  readonly part: ChartBar['parts'][number]['part'];
  readonly within: boolean;
}

/** Where each part lies: those above 0 to the right of 0, one after the other, those below 0 to the left. */
export function segmentsOf(bars: readonly ChartBar[]): readonly Segment[] {
  return bars.flatMap(({ parts }, at) => {
    let [right, left] = [0, 0];
    return parts.map(({ part, value, within }): Segment => {
      const from = value >= 0 ? right : left;
      if (value >= 0) right += value;
      else left += value;
      return { at, from, to: from + value, part, within };
    });
  });
}

/** Bars of the parts of observed leans, one below the other, on the axis that all panels share. */
export function drawLeanParts(data: ChartData, panel: ChartPanel, size: Size, axes: Axes): Drawn {
  const bars = panel.bars ?? [];
  const ends = data.panels.flatMap(({ bars = [] }) => segmentsOf(bars).flatMap(({ from, to }) => [from, to]));
  const domain = [Math.min(0, ...ends), Math.max(1, ...ends) * 1.08];
  const longest = Math.max(4, ...data.panels.flatMap(({ bars = [] }) => bars.map(({ name }) => name.length)));
  const left = Math.min(Math.round(size.width * 0.38), 14 + 6.6 * longest);
  const room = Math.floor((left - 14) / 6.6);
  const short = (name: string): string => (name.length > room ? `${name.slice(0, room - 1)}…` : name);
  const top = around.top + (panel.title ? around.title : 0);
  const inside = size.width - left - 44;
  const segments = segmentsOf(bars);
  // All panels have room for the longest, so that bars are of one thickness.
  const rows = Math.max(1, ...data.panels.map(({ bars = [] }) => bars.length));
  const wide = ({ from, to }: Segment): boolean =>
    (Math.abs(to - from) / (domain[1]! - domain[0]!)) * inside >= 18;
  const half = 0.34;
  const plot = Plot.plot({
    document: blankSheet(),
    ...size,
    marginLeft: left,
    marginRight: 44,
    marginTop: top,
    marginBottom: around.bottom,
    className: 'chart-svg',
    ariaLabel: panel.title || data.title,
    x: {
      label: axes === 'named' ? data.x.label : null,
      labelAnchor: 'center',
      labelArrow: 'none',
      domain,
      grid: true,
      ticks: Math.max(2, Math.round(inside / 70)),
    },
    y: { axis: null, domain: [rows - 0.5, -0.5] },
    color: { type: 'identity' },
    marks: [
      panel.title
        ? Plot.text([panel.title], {
            frameAnchor: 'top-left',
            dx: 4 - left,
            dy: 4 - top,
            fontWeight: 600,
            fill: 'var(--ink)',
          })
        : null,
      Plot.rect(segments, {
        x1: ({ from, to }: Segment) => Math.min(from, to),
        x2: ({ from, to }: Segment) => Math.max(from, to),
        y1: ({ at }: Segment) => at - half,
        y2: ({ at }: Segment) => at + half,
        fill: ({ part }: Segment) => partLooks[part][0],
        fillOpacity: ({ within, part }: Segment) => (within ? 0.35 : part === 'reference' ? 0.55 : 0.9),
        stroke: 'var(--sheet)',
        strokeWidth: 1,
      }),
      Plot.text(segments.filter(wide), {
        x: ({ from, to }: Segment) => (from + to) / 2,
        y: 'at',
        text: ({ part }: Segment) => partLooks[part][1],
        fill: 'var(--ink)',
        stroke: 'var(--sheet)',
        strokeWidth: 3,
        fontWeight: 600,
      }),
      Plot.ruleX([0], { stroke: 'var(--ink)', strokeWidth: 1.2 }),
      Plot.link(
        bars.flatMap(({ lean }, at) => [
          { lean, at: at - 0.43 },
          { lean, at: at + 0.43 },
        ]),
        {
          x1: 'lean',
          x2: 'lean',
          y1: ({ at }: { at: number }) => at - 0.08,
          y2: ({ at }: { at: number }) => at + 0.08,
          stroke: 'var(--ink)',
          strokeWidth: 2.4,
        },
      ),
      Plot.text(
        bars.map(({ lean }, at) => ({ at, lean })),
        {
          x: ({ at }: { at: number }) =>
            Math.max(...segments.filter((one) => one.at === at).map(({ to }) => to)),
          y: 'at',
          text: ({ lean }: { lean: number }) => `${Math.round(lean)}°`,
          textAnchor: 'start',
          dx: 6,
          fontWeight: 600,
          fill: 'var(--ink)',
        },
      ),
      Plot.text(
        bars.map(({ name }, at) => ({ at, name: short(name) })),
        { frameAnchor: 'left', y: 'at', text: 'name', textAnchor: 'end', dx: -8, fill: 'var(--ink)' },
      ),
    ],
  }) as (SVGSVGElement | HTMLElement) & Plot.Plot;
  const [scaleX, scaleY] = [plot.scale('x')!, plot.scale('y')!];
  return {
    shape: sketchedShape(plot),
    ...size,
    at: (point) => [scaleX.apply(point.x) as number, scaleY.apply(point.y) as number],
  };
}
