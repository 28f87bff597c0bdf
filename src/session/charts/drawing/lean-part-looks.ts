/** Colours, signs and sizes of the bars of observed leans. */
import type { ChartBar } from '../data.ts';

/** Colour and sign of each part: the letters tell them apart without colour. */
export const partLooks: Readonly<
  Record<ChartBar['parts'][number]['part'], readonly [colour: string, sign: string]>
> = {
  reference: ['var(--chart-quiet)', 'Av'],
  femur: ['var(--chart-1)', 'Fe'],
  tibia: ['var(--chart-2)', 'Ti'],
  trunk: ['var(--chart-3)', 'Tr'],
  ankle: ['var(--chart-5)', 'An'],
  use: ['var(--chart-6)', 'No'],
  balance: ['var(--chart-4)', 'Ba'],
};

/** Height of one bar with the gap to the next, px. */
const barHeight = 30;
export const around = { top: 10, bottom: 44, title: 22 } as const;

/** How high a drawing of so many bars is. */
export const heightOfBars = (bars: number): number =>
  around.top + around.title + around.bottom + barHeight * bars;
