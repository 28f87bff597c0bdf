import type { Tone } from '../../session/marks/mark-record.ts';
import type { TrendLine } from '../../session/marks/trend.ts';
import { signs } from './tones.ts';

/*
 * What is drawn into cells, as SVG made of attributes alone: the page's policy lets no element carry styles. Each kind
 * is made once and copied, for the grid draws its cells anew at every step of scrolling.
 */

type Shape = SVGElement;

function make(name: string, attributes: Readonly<Record<string, string>>, ...inside: Shape[]): Shape {
  const element = document.createElementNS('http://www.w3.org/2000/svg', name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  element.append(...inside);
  return element;
}

const signTemplates = new Map<Tone, Shape>();

/** The shape of a tone, with the words that it stands for. */
export function sign(tone: Tone, words: string): Shape {
  let template = signTemplates.get(tone);
  if (!template) {
    const { filled, lined } = signs[tone];
    template = make('svg', { viewBox: '0 0 12 12', role: 'img', class: 'mark-sign' });
    if (filled) template.append(make('path', { d: filled, fill: 'currentColor' }));
    if (lined)
      template.append(
        make('path', { d: lined, fill: 'none', stroke: 'currentColor', 'stroke-width': '1.6' }),
      );
    signTemplates.set(tone, template);
  }
  const copy = template.cloneNode(true) as Shape;
  copy.setAttribute('aria-label', words);
  return copy;
}

/** Lines keep their width however the drawing is stretched. */
const steady = { 'vector-effect': 'non-scaling-stroke' };
const hidden = { 'aria-hidden': 'true', preserveAspectRatio: 'none' };

/** A bar from nought (or the end that is nearer to it) to the value, on the whole length of the scale. */
export function scaleBar(zero: number, at: number): Shape {
  const [from, to] = at < zero ? [at, zero] : [zero, at];
  const inside = zero > 0 && zero < 1;
  return make(
    'svg',
    { viewBox: '0 0 1000 10', class: 'mark-scale', ...hidden },
    make('rect', { x: '0', y: '3', width: '1000', height: '4', class: 'mark-scale-whole' }),
    make('rect', {
      x: (from * 1000).toFixed(1),
      y: '0',
      width: Math.max(6, (to - from) * 1000).toFixed(1),
      height: '10',
      class: 'mark-scale-bar',
    }),
    ...(inside
      ? [
          make('path', {
            d: `M${(zero * 1000).toFixed(1)} -4V14`,
            class: 'mark-scale-zero',
            ...steady,
          }),
        ]
      : []),
  );
}

/** A line through the places of a row, with a dot at its newest. */
export function trendLine({ at, words }: TrendLine): Shape {
  let d = '';
  let broken = true;
  let end = '';
  let alone = '';
  const dots: string[] = [];
  for (let i = 0; i < at.length; i += 2) {
    const y = at[i + 1]!;
    if (Number.isNaN(y)) {
      if (alone) dots.push(alone);
      alone = '';
      broken = true;
      continue;
    }
    const place = `${(at[i]! * 100).toFixed(1)} ${(100 - y * 100).toFixed(1)}`;
    d += `${broken ? 'M' : 'L'}${place}`;
    // A value between two gaps is a dot: a line needs two.
    alone = broken ? place : '';
    broken = false;
    end = place;
  }
  dots.push(end);
  return make(
    'svg',
    {
      viewBox: '0 0 100 100',
      preserveAspectRatio: 'none',
      role: 'img',
      'aria-label': words,
      class: 'mark-trend',
    },
    make('path', { d, class: 'mark-trend-line', ...steady }),
    // A stroke without length is a dot that keeps its shape.
    make('path', { d: dots.map((place) => `M${place}h0`).join(''), class: 'mark-trend-dot', ...steady }),
  );
}
