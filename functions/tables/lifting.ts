import { type Issue, issue } from '../core/issue.ts';
import { number, numberOr, option, optionOr } from '../core/parameter.ts';
import { bodyMass } from './parameters.ts';
import { methods } from './repetitions.ts';

const heavy = { min: 0, max: 700, because: 'More than any barbell squat: check the unit.' };

export const loadParameter = (name: string, about: string) => number(name, 'kg', about, { bounds: heavy });

/** A mass that is divided by or stands for a whole: 0 has no answer. */
export const divisorLoad = (name: string, about: string) =>
  number(name, 'kg', about, { bounds: heavy, divisor: true });

export const massParameter = bodyMass();

/** Sum of the lifts of a meet. */
export const totalParameter = (about: string) =>
  number('total', 'kg', about, {
    bounds: { min: 0, max: 2000, because: 'More than any total: check the unit.' },
  });

export const sexParameter = option('sex', ['female', 'male'], 'which of the two tables of constants', {
  F: 'female',
  M: 'male',
});

export const repsParameter = number('reps', 'reps', 'repetitions done', {
  bounds: { min: 1, max: 36, because: 'The equations have no meaning outside it; above 10 they are rough.' },
});

export const methodParameter = optionOr(
  'epley',
  'method',
  methods,
  'which equation, or the mean of the seven',
  {
    "o'conner": 'oconner',
    oconnor: 'oconner',
    "o'connor": 'oconner',
  },
);

export const rirParameter = numberOr(
  0,
  'rir',
  'reps',
  'repetitions in reserve: how many more were possible',
  {
    bounds: { min: 0, max: 10, because: 'Nobody can tell more than 10 repetitions in reserve.' },
  },
);

/** n = reps + rir, or the issue of a sum that no equation takes. */
export function repetitionsToFailure(reps: number, rir: number): number | Issue {
  const n = reps + rir;
  if (n <= 36) return n;
  return issue('#NUM!', 'reps-and-rir', { parameter: 'rir', received: n, details: { reps, rir } });
}
