import * as Plot from '@observablehq/plot';
import type { ChartData, ChartPanel, ChartPoint } from '../data.ts';
import { drawLeanParts } from './lean-parts-drawing.ts';
import { lineNames, namesFit, roomForNames } from './line-names.ts';
import { drawLoad } from './load.ts';
import { classOf, colourOf, groupColours, isCrowded, symbolOf } from './looks.ts';
import { manyPoints, mostElements } from './many.ts';
import { namesApart } from './names-apart.ts';
import { type Axes, aside, type Drawn, dateOf, isSquare, type Size, spansOf } from './places.ts';
import { blankSheet, sketchedShape } from './sketch.ts';

/** Draws one panel; all panels of a chart share their scales. */
export function drawPanel(data: ChartData, panel: ChartPanel, size: Size, axes: Axes = 'named'): Drawn {
  if (data.kind === 'load') return drawLoad(data, panel, size, axes);
  if (data.kind === 'lean-parts') return drawLeanParts(data, panel, size, axes);
  const named = axes === 'named';
  const dated = data.x.is === 'date';
  const place = (x: number): number | Date => (dated ? dateOf(x) : x);
  const across = (point: ChartPoint): number | Date =>
    data.x.is === 'groups' ? point.x + aside(point) : place(point.x);
  const { x, y } = spansOf(data);
  const groupNames = data.groups.length > 0 ? data.groups : ['all'];
  const lineNamesShown = namesFit(data, size.height);
  const longest = Math.max(0, ...panel.levels.map(({ label, x }) => (x === undefined ? label.length : 0)));
  const margin = {
    left: 50,
    right: lineNamesShown ? roomForNames(data) : longest > 0 ? 16 + 6.4 * longest : 20,
    top: (panel.title ? 24 : 8) + (named ? 18 : 0),
    bottom: named && data.x.is !== 'groups' ? 44 : 26,
  };
  const turned =
    data.x.is === 'groups' &&
    Math.max(...groupNames.map(({ length }) => length)) * 6.6 >
      (size.width - margin.left - margin.right) / groupNames.length;
  const many = panel.points.length > mostElements;
  const inside = size.width - margin.left - margin.right;
  const plot = Plot.plot({
    document: blankSheet(),
    ...size,
    marginLeft: margin.left,
    marginRight: margin.right,
    marginTop: margin.top,
    marginBottom: turned ? 84 : margin.bottom,
    className: 'chart-svg',
    ariaLabel: panel.title || data.title,
    x:
      data.x.is === 'groups'
        ? {
            label: null,
            domain: [-0.6, groupNames.length - 0.4],
            ticks: groupNames.map((_, index) => index),
            tickFormat: (index: number) => groupNames[index] ?? '',
            ...(turned ? { tickRotate: -40 } : {}),
          }
        : {
            label: named ? data.x.label : null,
            labelAnchor: 'center',
            labelArrow: 'none',
            domain: x.map((end) => place(end)),
            ...(dated ? { type: 'utc' as const } : { nice: true }),
            ticks: Math.max(2, Math.round(inside / 80)),
          },
    y: {
      label: named ? data.y.label : null,
      labelArrow: 'none',
      domain: y,
      nice: true,
      grid: true,
      ticks: Math.max(3, Math.round(size.height / (isSquare(data) ? 60 : 48))),
    },
    symbol: {
      domain: groupNames.map((_, index) => index),
      range: groupNames.map((_, index) => symbolOf(index)),
    },
    color: { type: 'identity' },
    marks: [
      panel.title
        ? Plot.text([panel.title], {
            frameAnchor: 'top-left',
            dx: 4 - margin.left,
            dy: 4 - margin.top,
            fontWeight: 600,
            fill: 'var(--ink)',
          })
        : null,
      ...bands(panel, place),
      ...levels(panel),
      ...(many ? [] : lines(data, panel, place)),
      many
        ? (_index, scales, _values, _size, context) => {
            const [toX, toY] = [scales.x as (at: unknown) => number, scales.y as (at: unknown) => number];
            return manyPoints(context!.document, panel.points, (point) => [toX(across(point)), toY(point.y)]);
          }
        : dots(data, panel, across),
      ...(many ? lines(data, panel, place) : []),
      ...groupLevels(panel, inside / groupNames.length > 70),
      lineNamesShown ? lineNames(data, panel) : null,
      namesApart(panel, across),
    ],
  }) as (SVGSVGElement | HTMLElement) & Plot.Plot;
  const [scaleX, scaleY] = [plot.scale('x')!, plot.scale('y')!];
  return {
    shape: sketchedShape(plot),
    ...size,
    at: (point) => [scaleX.apply(across(point)) as number, scaleY.apply(point.y) as number],
  };
}

type Place = (x: number) => number | Date;

const bands = ({ bands }: ChartPanel, place: Place): Plot.Markish[] =>
  bands.map((band) =>
    Plot.areaY(band.at, {
      x: ([at]) => place(at),
      y1: ([, low]) => low,
      y2: ([, , high]) => high,
      fill: 'var(--chart-band)',
      clip: true,
    }),
  );

/** Lines across the whole drawing, named at its right edge. */
const levels = ({ levels }: ChartPanel): Plot.Markish[] =>
  levels
    .filter(({ x }) => x === undefined)
    .flatMap(({ is, y, label }) => [
      Plot.ruleY([y], {
        stroke: is === 'zero' ? 'var(--rule-firm)' : 'var(--ink)',
        strokeWidth: is === 'bias' ? 1.5 : is === 'zero' ? 0.8 : 1.1,
        ...(is === 'limit' ? { strokeDasharray: '5 4' } : {}),
      }),
      label === ''
        ? null
        : Plot.text([label], { frameAnchor: 'right', y, dx: 6, textAnchor: 'start', fill: 'var(--ink)' }),
    ]);

function lines(data: ChartData, { lines }: ChartPanel, place: Place): Plot.Markish[] {
  const crowded = isCrowded(data);
  const trendColour = (group: number): string =>
    crowded ? 'var(--chart-quiet)' : colourOf(data.panels.length > 1 ? 0 : group);
  return lines.map((one) =>
    Plot.line(one.at, {
      x: ([at]) => place(at),
      y: ([, at]) => at,
      stroke: one.is === 'trend' ? trendColour(one.group) : 'var(--ink)',
      strokeWidth: one.is === 'trend' ? 1.6 : 1.3,
      ...(one.is === 'equal' || one.is === 'mid-foot' ? { strokeDasharray: '2 3' } : {}),
      ...(one.is === 'trend' ? { className: classOf(one.group) } : {}),
      clip: true,
    }),
  );
}

function dots(
  data: ChartData,
  { points }: ChartPanel,
  across: (point: ChartPoint) => number | Date,
): Plot.Markish {
  const crowded = isCrowded(data);
  // In panels of a trend the title says whose it is, over many groups the place does: one mark serves for all.
  const alike =
    crowded ||
    (data.kind === 'trend' && data.panels.length > 1) ||
    (data.x.is === 'groups' && data.groups.length > groupColours);
  const group = (point: ChartPoint): number => (alike ? 0 : point.group);
  const colour = (point: ChartPoint): string => (crowded ? 'var(--chart-quiet)' : colourOf(group(point)));
  return Plot.dot(points, {
    x: across,
    y: 'y',
    symbol: group,
    r: crowded ? 2 : points.length > 400 ? 2.2 : 3.6,
    stroke: colour,
    fill: colour,
    fillOpacity: crowded ? 1 : 0.28,
  });
}

/** Median and quartiles over the place of their group; with their figure where groups stand far enough apart. */
const groupLevels = ({ levels }: ChartPanel, labelled: boolean): Plot.Markish[] =>
  levels.flatMap(({ is, x, y, label }) =>
    x === undefined
      ? []
      : [
          Plot.ruleY([y], {
            x1: x - 0.36,
            x2: x + 0.36,
            stroke: 'var(--ink)',
            strokeWidth: is === 'median' ? 2.6 : 1.1,
          }),
          labelled
            ? Plot.text([label], {
                x: x + 0.38,
                y,
                textAnchor: 'start',
                fill: 'var(--ink)',
                stroke: 'var(--sheet)',
                strokeWidth: 3,
              })
            : null,
        ],
  );
