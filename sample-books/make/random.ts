/** Numbers by chance that are the same on every machine for the same seed. */
export class Random {
  private state: number;
  private spare: number | undefined;

  constructor(seed: number) {
    this.state = seed >>> 0;
  }

  /** From 0 to below 1: mulberry32 (public domain). */
  unit(): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let t = this.state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  }

  /** From the normal distribution (Marsaglia's polar method). */
  normal(mean = 0, sd = 1): number {
    if (this.spare !== undefined) {
      const z = this.spare;
      this.spare = undefined;
      return mean + sd * z;
    }
    for (;;) {
      const [u, v] = [2 * this.unit() - 1, 2 * this.unit() - 1];
      const s = u * u + v * v;
      if (s === 0 || s >= 1) continue;
      const f = Math.sqrt((-2 * Math.log(s)) / s);
      this.spare = v * f;
      return mean + sd * u * f;
    }
  }

  whole(from: number, to: number): number {
    return from + Math.floor(this.unit() * (to - from + 1));
  }

  chance(share: number): boolean {
    return this.unit() < share;
  }

  pick<T>(list: readonly T[]): T {
    return list[this.whole(0, list.length - 1)]!;
  }
}

/** To the nearest step, without the dust of binary fractions. */
export const rounded = (value: number, step: number): number =>
  Number((Math.round(value / step) * step).toFixed(4));
