import { asin, cos } from './angle.ts';
import { leverOf } from './leg.ts';

/** The highest lift, cm, that can be tried: up to `most`, less than heel to ball, the shank short of level. */
export function highestLift(most: number, ankle: number, foot: number): number {
  const lever = leverOf(foot);
  const highest = most < lever ? most : lever * (1 - 1e-12);
  if (ankle + asin(highest / lever) < 90) return highest;
  return lever * cos(ankle) * (1 - 1e-9);
}

/** The least lift, cm, that serves: the end that serves of an interval halved down to `within`. */
export function halve(serves: (lift: number) => boolean, low: number, high: number, within: number): number {
  let short = low;
  let enough = high;
  while (enough - short > within) {
    const middle = (short + enough) / 2;
    if (serves(middle)) enough = middle;
    else short = middle;
  }
  return enough;
}

/** Steps from 0, `most` last. */
export function* liftsUpTo(most: number, step: number): Generator<number> {
  for (let i = 0; i * step < most; i++) yield i * step;
  yield most;
}
