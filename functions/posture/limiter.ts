import type { BarRulePlacement } from './balance.ts';
import { barRule } from './balance.ts';
import { deepestOf, LOWEST } from './deepest.ts';

/** What can limit the depth, in the order in which equal gains are told. */
export const limitWords = ['ankle', 'knee', 'hip', 'lean'] as const;
export type Limit = (typeof limitWords)[number];

/** The deepest position, and how many degrees deeper each limit loosened by 1° would make it. */
export interface Gains extends Readonly<Record<Limit, number>> {
  readonly deepest: number;
}

/** Gains within this count as equal, deg. */
const EQUAL = 0.01;
/** A smaller gain is none, deg. */
const SMALLEST = 0.02;

/** Gains of all four limits, deg; undefined when there is no posture at 60°. Limits are loosened past their bounds too. */
export function gainsOf(
  placement: BarRulePlacement,
  femur: number,
  tibia: number,
  trunk: number,
  ankle: number,
  lift: number,
  foot: number,
  stance: number,
  maxLean: number,
  maxHip: number,
  maxKnee: number,
): Gains | undefined {
  const balance = barRule(placement);
  const deepest = (a: number, lean: number, hip: number, knee: number): number =>
    deepestOf(balance, femur, tibia, trunk, a, lift, foot, stance, lean, hip, knee);
  const now = deepest(ankle, maxLean, maxHip, maxKnee);
  if (Number.isNaN(now)) return undefined;
  // a loosened limit that leaves no posture gains nothing
  const gain = (then: number): number => (then < now ? now - then : 0);
  return {
    deepest: now,
    ankle: gain(deepest(ankle + 1, maxLean, maxHip, maxKnee)),
    knee: gain(deepest(ankle, maxLean, maxHip, maxKnee + 1)),
    hip: gain(deepest(ankle, maxLean, maxHip + 1, maxKnee)),
    lean: gain(deepest(ankle, maxLean + 1, maxHip, maxKnee)),
  };
}

/** The limit that gains most when loosened, or "none". */
export function limiterOf(gains: Gains): Limit | 'none' {
  if (gains.deepest <= LOWEST) return 'none';
  const most = Math.max(...limitWords.map((word) => gains[word]));
  if (most < SMALLEST) return 'none';
  return limitWords.find((word) => gains[word] >= most - EQUAL)!;
}
