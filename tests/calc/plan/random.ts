/** A repeatable source of chance (mulberry32): the seed stands in the message of a test that fails. */
export interface Chance {
  readonly seed: number;
  /** In [0, 1). */
  next(): number;
  below(n: number): number;
  pick<T>(of: readonly T[]): T;
  maybe(probability: number): boolean;
}

export function chance(seed: number): Chance {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return {
    seed,
    next,
    below: (n) => Math.floor(next() * n),
    pick: (of) => of[Math.floor(next() * of.length)]!,
    maybe: (probability) => next() < probability,
  };
}
