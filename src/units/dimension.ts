/** What a number measures. Everything is stored and computed in the one base unit of its dimension. */
export const dimensions = {
  length: 'cm',
  mass: 'kg',
  angle: 'deg',
  force: 'N',
  moment: 'N·m',
  velocity: 'm/s',
  duration: 'min',
} as const;

export type Dimension = keyof typeof dimensions;

/** What a rate is counted by: 2 kg per week. */
export const spans = ['day', 'week'] as const;
export type Per = (typeof spans)[number];
