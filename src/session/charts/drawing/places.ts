/** Where points go along the axes of a chart. */
import type { Shape } from '../../figure/drawing/svg-shape.ts';
import type { ChartData, ChartPoint } from '../data.ts';
import { heightOfBars } from './lean-part-looks.ts';

export const week = 7 * 86_400_000;

/** A day as the time axis takes it: serial day 25569 is 1970-01-01. */
export const dateOf = (day: number): Date => new Date((day - 25569) * 86_400_000);

/** A little to the side, always the same for a row, so that equal values do not hide each other. */
export const aside = ({ row }: ChartPoint): number => (((row * 0.618034) % 1) - 0.5) * 0.5;

type Span = [number, number];
const none = (): Span => [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
const take = (span: Span, value: number): void => {
  if (value < span[0]) span[0] = value;
  if (value > span[1]) span[1] = value;
};

/** A little air around a span; none below zero where nothing lies there: no load and no range is negative. */
const aired = ([low, high]: Span, air: number): Span => {
  if (low > high) return [0, 1];
  const room = low === high ? 1 : air * (high - low);
  return [low >= 0 ? Math.max(0, low - room) : low - room, high + room];
};

/** Two measures of one kind are compared on equal axes: their line of equality is then the diagonal. */
export const isSquare = ({ kind }: ChartData): boolean => kind === 'pairs' || kind === 'sides';

/** The span of everything drawn in all panels, a little air around it. */
export function spansOf(data: ChartData): { x: Span; y: Span } {
  const [x, y] = [none(), none()];
  for (const { points, levels, bands, lines } of data.panels) {
    for (const point of points) {
      take(x, point.x);
      take(y, point.y);
    }
    for (const level of levels) take(y, level.y);
    for (const band of bands)
      for (const [, low, high] of band.at) {
        take(y, low);
        take(y, high);
      }
    for (const one of lines)
      for (const [at, value] of one.at) {
        take(y, value);
        if (one.is === 'mid-foot') take(x, at);
      }
  }
  if (data.kind === 'load')
    return { x: x[0] <= x[1] ? [x[0], x[1] + 7] : [0, 7], y: [0, y[1] > 0 ? y[1] * 1.04 : 1] };
  if (isSquare(data)) {
    const both = aired([Math.min(x[0], y[0]), Math.max(x[1], y[1])], 0.03);
    return { x: both, y: both };
  }
  return { x: aired(x, 0.03), y: aired(y, 0.03) };
}

/** Height that a name at the end of a line takes, px at 12 px. */
export const lineHeight = 12.5;
/** A drawing grows for the names of so many lines, not of more. */
const mostNamedLines = 40;

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** How large the panels of a chart are drawn where so much width is free. */
export function sizeFor(data: ChartData, free: number): Size {
  const gap = 12;
  if (data.kind === 'lean-parts') {
    const bars = Math.max(1, ...data.panels.map(({ points }) => points.length));
    return { width: Math.min(free, 900), height: heightOfBars(bars) };
  }
  if (data.panels.length > 1) {
    const columns = Math.max(1, Math.min(data.panels.length, Math.floor((free + gap) / (280 + gap))));
    const width = Math.min(420, Math.floor((free - (columns - 1) * gap) / columns));
    return { width, height: isSquare(data) ? width - 20 : data.kind === 'load' ? 250 : 210 };
  }
  if (isSquare(data)) {
    const width = Math.min(free, 560);
    return { width, height: width };
  }
  const names = data.kind === 'trend' && data.groups.length <= mostNamedLines ? data.groups.length : 0;
  const height = Math.max(280, 80 + lineHeight * names, Math.min(520, Math.round(free * 0.58)));
  return { width: free, height: data.kind === 'load' ? height + 40 : height };
}

/** What is drawn of a panel, and where its points stand in it. */
export interface Drawn extends Size {
  readonly shape: Shape;
  /** Place of a point in the drawing's own units. */
  at(point: ChartPoint): readonly [x: number, y: number];
}

/** Whether a panel names its axes itself, or shares them with the panels around it. */
export type Axes = 'named' | 'shared';
