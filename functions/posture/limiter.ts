import { LOWEST } from './deepest.ts';

export type Limiter = 'ankle' | 'knee' | 'hip' | 'lean' | 'none';

/** What holds the descent, with the gain in depth (deg) of each degree more. */
export interface Held {
  readonly word: Limiter;
  readonly deepest: number;
  readonly ankle: number;
  readonly knee: number;
  readonly hip: number;
  readonly lean: number;
}

/** From the deepest position as a function of ankle range and limits; undefined when there is none. */
export function limiterOf(
  deepest: (ankle: number, maxLean: number, maxHip: number, maxKnee: number) => number,
  ankle: number,
  maxLean: number,
  maxHip: number,
  maxKnee: number,
): Held | undefined {
  const now = deepest(ankle, maxLean, maxHip, maxKnee);
  if (Number.isNaN(now)) return undefined;
  // a loosened limit that leaves no posture gains nothing
  const gain = (then: number): number => (Number.isNaN(then) ? 0 : now - then);
  const gains = {
    deepest: now,
    ankle: gain(deepest(ankle + 1, maxLean, maxHip, maxKnee)),
    knee: gain(deepest(ankle, maxLean, maxHip, maxKnee + 1)),
    hip: gain(deepest(ankle, maxLean, maxHip + 1, maxKnee)),
    lean: gain(deepest(ankle, maxLean + 1, maxHip, maxKnee)),
  };
  return { word: wordOf(gains), ...gains };
}

function wordOf({ deepest, ankle, knee, hip, lean }: Omit<Held, 'word'>): Limiter {
  if (deepest <= LOWEST) return 'none';
  if (ankle >= 0.5) return 'ankle';
  const most = Math.max(knee, hip, lean);
  if (most < 0.02) return 'none';
  if (knee >= most - 0.01) return 'knee';
  return hip >= most - 0.01 ? 'hip' : 'lean';
}
