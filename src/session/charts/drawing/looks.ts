import type { ChartData } from '../data.ts';

/** Six colours told apart in the common forms of colour-blindness; shapes tell groups apart without colour. */
export const groupColours = 6;
const symbols = ['circle', 'triangle', 'square', 'diamond2', 'cross', 'wye'] as const;

export const colourOf = (group: number): string => `var(--chart-${(group % groupColours) + 1})`;

/** A round of colours later the shapes are shifted by one, so that the seventh group is not the first again. */
export const shapeIndexOf = (group: number): number =>
  (group + Math.floor(group / groupColours)) % symbols.length;
export const symbolOf = (group: number): (typeof symbols)[number] => symbols[shapeIndexOf(group)]!;

/** Lines of more athletes than there are colours are drawn in one quiet colour, with their names at the ends. */
export const isCrowded = ({ kind, groups, panels }: ChartData): boolean =>
  kind === 'trend' && panels.length === 1 && groups.length > groupColours;

/** Everything of a group carries this class, so that the page can light it up. */
export const classOf = (group: number): string => `chart-of-${group}`;
