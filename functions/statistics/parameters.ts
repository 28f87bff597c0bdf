import { numberOr, range } from '../core/parameter.ts';

export const confidence = numberOr(
  0.95,
  'confidence',
  '',
  'share of such intervals that hold the true value',
  {
    bounds: { above: 0, below: 1, because: 'A confidence is a share between 0 and 1: write .95 or 95%.' },
  },
);

/** A column whose cells pair up with those of another. */
export const paired = (name: string, about: string) =>
  range(name, 'number', '', about, { together: 'pairs' });

export const column = (name: string, about: string) => range(name, 'number', '', about);

export const pairNotes: readonly string[] = ['Pairs with a blank on either side are left out.'];
