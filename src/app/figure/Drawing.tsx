import { h, type VNode } from 'preact';
import type { Figure } from '../../session/api.ts';
import { type DrawingOptions, drawingOf } from '../../session/figure/drawing/drawing.ts';
import type { Shape } from '../../session/figure/drawing/svg-shape.ts';

/** The lifter to scale: the set-up that is chosen in full, the other one as a thin outline behind it. */
export function Drawing({ figure, ...options }: { figure: Figure } & DrawingOptions) {
  const drawing = drawingOf(figure, options);
  return drawing && asElements(drawing);
}

/** A drawing made of plain records as elements of the page. */
export const asElements = ({ tag, attributes, children }: Shape): VNode =>
  h(tag, attributes, ...children.map((child) => (typeof child === 'string' ? child : asElements(child))));
