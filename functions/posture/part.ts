import { referenceFemur, referenceTibia, referenceTrunk } from '../tables/survey.ts';
import type { Balance } from './balance.ts';
import { leanOf } from './lean.ts';

export const parts = ['femur', 'tibia', 'trunk', 'ankle'] as const;
export type Part = (typeof parts)[number];

/** The reference build of somebody whose femur, tibia and trunk add up to `sum`, cm. */
export const referenceBuild = (sum: number): readonly [femur: number, tibia: number, trunk: number] => [
  referenceFemur.value * sum,
  referenceTibia.value * sum,
  referenceTrunk.value * sum,
];

/** Leans of all 16 mixtures of lifter and reference: bit 1 femur, 2 tibia, 4 trunk, 8 ankle are the lifter's own. */
export function leansOfMixtures(
  balance: Balance,
  femur: number,
  tibia: number,
  trunk: number,
  ankle: number,
  referenceAnkle: number,
  lift: number,
  depth: number,
  foot: number,
  stance: number,
): Float64Array {
  const [f, s, t] = referenceBuild(femur + tibia + trunk);
  const leans = new Float64Array(16);
  for (let own = 0; own < 16; own++)
    leans[own] = leanOf(
      balance,
      own & 1 ? femur : f,
      own & 2 ? tibia : s,
      own & 4 ? trunk : t,
      own & 8 ? ankle : referenceAnkle,
      lift,
      depth,
      foot,
      stance,
    );
  return leans;
}

// Shapley weights: of the 24 orders, the share in which exactly these others come before
const WEIGHTS = [6 / 24, 2 / 24, 2 / 24, 6 / 24] as const;

/** Shapley value of one part: what it adds, averaged over all orders in which the four can be put in. */
export function shapleyOf(part: Part, leans: Float64Array): number {
  const bit = 1 << parts.indexOf(part);
  let sum = 0;
  for (let others = 0; others < 16; others++) {
    if (others & bit) continue;
    const size = (others & 1) + ((others >> 1) & 1) + ((others >> 2) & 1) + ((others >> 3) & 1);
    sum += WEIGHTS[size]! * (leans[others | bit]! - leans[others]!);
  }
  return sum;
}

/** Which measures are the reference's in a mixture, in words. */
export const swappedIn = (own: number): string => parts.filter((_, i) => !(own & (1 << i))).join(', ');
