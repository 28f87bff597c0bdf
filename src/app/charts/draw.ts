import * as Plot from '@observablehq/plot';
import type { ChartData, ChartPanel, ChartPoint } from '../../session/charts/data.ts';
import { isoFromSerial } from '../../units/date.ts';

/** What is drawn of a panel, and where its points stand in it. */
export interface Drawn {
  readonly svg: SVGSVGElement;
  /** Place of a point in the drawing's own units. */
  at(point: ChartPoint): readonly [number, number];
}

/** More points than this stand on a canvas under the axes: as SVG elements they would take too long. */
export const mostInSvg = 5000;

/** Six colours told apart in all common forms of colour-blindness; shapes tell them apart without colour. */
export const groupColours = 6;
export const symbols = ['circle', 'triangle', 'square', 'diamond2', 'cross', 'wye'] as const;

export const symbolOf = (group: number): (typeof symbols)[number] => symbols[group % symbols.length]!;
export const colourOf = (group: number): string => `var(--chart-${(group % groupColours) + 1})`;

/** A day as the time axis takes it. */
const dateOf = (day: number): Date => new Date((day - 25569) * 86_400_000);

export const xOf = (data: ChartData, point: ChartPoint): string => {
  if (data.x.is === 'date') return isoFromSerial(point.x)?.slice(0, 10) ?? '';
  return data.x.is === 'groups' ? (data.groups[point.x] ?? 'all') : String(point.x);
};

/** A little to the side, always the same for a row, so that equal values do not hide each other. */
const aside = ({ row }: ChartPoint): number => (((row * 0.618034) % 1) - 0.5) * 0.5;

/** Draws one panel; all panels of a chart share their scales. Points are left out when a canvas draws them. */
export function drawPanel(
  data: ChartData,
  panel: ChartPanel,
  width: number,
  height: number,
  dots: boolean,
): Drawn {
  const dated = data.x.is === 'date';
  const place = (x: number): number | Date => (dated ? dateOf(x) : x);
  const across = (point: ChartPoint): number | Date =>
    data.x.is === 'groups' ? point.x + aside(point) : place(point.x);
  const bars = data.kind === 'load';
  const { x, y } = spans(data);
  const names = data.groups.length > 0 ? data.groups : ['all'];
  const week = 7 * 86_400_000;
  const plot = Plot.plot({
    width,
    height,
    marginLeft: 56,
    marginRight: 20,
    marginTop: panel.title ? 30 : 22,
    marginBottom: 44,
    className: 'chart-svg',
    ariaLabel: panel.title || data.title,
    x:
      data.x.is === 'groups'
        ? {
            label: null,
            domain: [-0.6, names.length - 0.4],
            ticks: names.map((_, index) => index),
            tickFormat: (index: number) => names[index] ?? '',
          }
        : {
            label: data.x.label,
            labelAnchor: 'center',
            labelArrow: 'none',
            domain: x.map((end) => place(end)),
            ...(dated ? { type: 'utc' as const } : { nice: true }),
            ...(width < 340 ? { ticks: 4 } : {}),
          },
    y: { label: data.y.label, labelArrow: 'none', domain: y, nice: true, grid: true },
    symbol: { domain: names.map((_, index) => index), range: names.map((_, index) => symbolOf(index)) },
    marks: [
      panel.title
        ? Plot.text([panel.title], { frameAnchor: 'top-left', dy: -26, className: 'chart-panel-title' })
        : null,
      ...panel.bands.map((band) =>
        Plot.areaY(band.at, {
          x: ([at]) => place(at),
          y1: ([, low]) => low,
          y2: ([, , high]) => high,
          fill: 'var(--chart-band)',
          clip: true,
        }),
      ),
      bars
        ? Plot.rectY(panel.points, {
            x1: ({ x }: ChartPoint) => dateOf(x),
            x2: ({ x }: ChartPoint) => new Date(dateOf(x).getTime() + week),
            y: 'y',
            fill: 'var(--chart-1)',
            inset: 0.5,
          })
        : null,
      bars ? Plot.ruleY([0], { stroke: 'var(--ink)' }) : null,
      bars && panel.points.length <= 40
        ? Plot.text(panel.points, {
            x: ({ x }: ChartPoint) => new Date(dateOf(x).getTime() + week / 2),
            y: 'y',
            text: ({ note }: ChartPoint) => /^monotony (.*)$/.exec(note ?? '')?.[1] ?? '',
            dy: -7,
            fill: 'var(--ink)',
          })
        : null,
      ...panel.levels
        .filter((level) => level.x === undefined)
        .flatMap((level) => [
          Plot.ruleY([level.y], {
            stroke: 'var(--ink)',
            strokeWidth: level.is === 'bias' ? 1.5 : 1.1,
            ...(level.is === 'bias' ? {} : { strokeDasharray: '5 4' }),
          }),
          Plot.text([level.label], {
            frameAnchor: 'right',
            y: level.y,
            dy: -8,
            fill: 'var(--ink)',
            stroke: 'var(--sheet)',
            strokeWidth: 4,
          }),
        ]),
      ...panel.lines.map((one) =>
        Plot.line(one.at, {
          x: ([at]) => place(at),
          y: ([, at]) => at,
          stroke: one.is === 'trend' ? colourOf(one.group) : 'var(--ink)',
          strokeWidth: one.is === 'trend' ? 1.6 : 1.3,
          ...(one.is === 'equal' ? { strokeDasharray: '2 3' } : {}),
          clip: true,
        }),
      ),
      dots && !bars
        ? Plot.dot(panel.points, {
            x: across,
            y: 'y',
            symbol: ({ group }: ChartPoint) => group,
            r: panel.points.length > 400 ? 2.2 : 3.6,
            stroke: ({ group }: ChartPoint) => colourOf(group),
            fill: ({ group }: ChartPoint) => colourOf(group),
            fillOpacity: 0.28,
          })
        : null,
      ...panel.levels
        .filter((level) => level.x !== undefined)
        .flatMap((level) => [
          Plot.ruleY([level.y], {
            x1: level.x! - 0.36,
            x2: level.x! + 0.36,
            stroke: 'var(--ink)',
            strokeWidth: level.is === 'median' ? 2.6 : 1.1,
          }),
          Plot.text([level.label], {
            x: level.x! + 0.4,
            y: level.y,
            textAnchor: 'start',
            fill: 'var(--ink)',
          }),
        ]),
    ],
    color: { type: 'identity' },
  }) as SVGSVGElement & Plot.Plot;
  // The page's policy allows no style written into it; the rules stand in charts.css.
  plot.querySelector('style')?.remove();
  const [scaleX, scaleY] = [plot.scale('x')!, plot.scale('y')!];
  return {
    svg: plot,
    at: (point) => {
      const middle = bars ? new Date(dateOf(point.x).getTime() + week / 2) : across(point);
      return [scaleX.apply(middle) as number, scaleY.apply(point.y) as number];
    },
  };
}

/** The span of everything drawn in all panels, a little air around it. */
function spans(data: ChartData): { x: [number, number]; y: [number, number] } {
  const x: [number, number] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const y: [number, number] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const take = (span: [number, number], value: number) => {
    if (value < span[0]) span[0] = value;
    if (value > span[1]) span[1] = value;
  };
  for (const { points, levels, bands, lines } of data.panels) {
    for (const point of points) {
      take(x, point.x);
      take(y, point.y);
    }
    for (const level of levels) take(y, level.y);
    for (const band of bands) for (const [, low, high] of band.at) [low, high].map((value) => take(y, value));
    for (const one of lines) for (const [, value] of one.at) take(y, value);
  }
  if (data.kind === 'load') {
    take(y, 0);
    if (x[0] <= x[1]) take(x, x[1] + 7);
  }
  const aired = ([low, high]: [number, number], air: number): [number, number] =>
    low > high
      ? [0, 1]
      : low === high
        ? [low - 1, high + 1]
        : [low - air * (high - low), high + air * (high - low)];
  return {
    x: aired(x, data.kind === 'load' ? 0 : 0.03),
    y: data.kind === 'load' ? [0, y[1] > 0 ? y[1] * 1.08 : 1] : aired(y, 0.03),
  };
}

/** Draws many points on a canvas that lies under the drawing, as sharp as the screen is. */
export function drawDots(
  canvas: HTMLCanvasElement,
  drawn: Drawn,
  panel: ChartPanel,
  width: number,
  height: number,
): void {
  const ratio = globalThis.devicePixelRatio || 1;
  canvas.width = width * ratio;
  canvas.height = height * ratio;
  const pen = canvas.getContext('2d');
  if (!pen) return;
  pen.scale(ratio, ratio);
  pen.globalAlpha = 0.45;
  const style = getComputedStyle(canvas);
  const colours = Array.from({ length: groupColours }, (_, index) =>
    style.getPropertyValue(`--chart-${index + 1}`),
  );
  const parts = new Map<number, ChartPoint[]>();
  for (const point of panel.points) {
    const part = parts.get(point.group);
    if (part) part.push(point);
    else parts.set(point.group, [point]);
  }
  for (const [group, points] of parts) {
    pen.fillStyle = colours[group % groupColours] || '#333';
    for (const point of points) {
      const [x, y] = drawn.at(point);
      pen.beginPath();
      if (group % 2 === 0) pen.arc(x, y, 1.9, 0, 2 * Math.PI);
      else pen.rect(x - 1.7, y - 1.7, 3.4, 3.4);
      pen.fill();
    }
  }
}
