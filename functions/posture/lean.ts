import type { Issue } from '../core/issue.ts';
import { defaultFoot } from '../tables/foot.ts';
import { type Balance, type BarRulePlacement, barRule, demandShare, leanThatBalances } from './balance.ts';
import { newLeg, pitchOf, setLeg } from './leg.ts';
import { whyNoPosture } from './why.ts';

// filled and read within one call; nothing is kept
const leg = newLeg();

/**
 * What the trunk has to balance as a share of what it can, for a lifter who uses the whole ankle range: lengths and lift
 * cm, angles deg. Above 1 the hip is too far behind, below −1 too far ahead; NaN without a leg that stands.
 */
export function demandOf(
  balance: Balance,
  femur: number,
  tibia: number,
  trunk: number,
  ankle: number,
  lift: number,
  depth: number,
  foot: number,
  stance: number,
): number {
  const pitch = pitchOf(lift, foot);
  const shank = ankle + pitch;
  if (!(shank < 90)) return Number.NaN;
  setLeg(leg, femur, tibia, foot, pitch, shank, depth, stance);
  return demandShare(balance, leg, trunk);
}

/** Trunk lean, deg from the vertical. NaN when no posture is balanced. Allocates nothing. */
export const leanOf = (
  balance: Balance,
  femur: number,
  tibia: number,
  trunk: number,
  ankle: number,
  lift: number,
  depth: number,
  foot: number,
  stance: number,
): number =>
  leanThatBalances(balance, demandOf(balance, femur, tibia, trunk, ankle, lift, depth, foot, stance));

/** The lean by the bar rule, or the issue that says why there is none. */
export function barRuleLean(
  femur: number,
  tibia: number,
  trunk: number,
  ankle: number,
  lift: number,
  depth: number,
  placement: BarRulePlacement,
  foot: number | undefined,
  stance: number,
): number | Issue {
  const balance = barRule(placement);
  const length = foot ?? defaultFoot(femur, tibia, trunk);
  const lean = leanOf(balance, femur, tibia, trunk, ankle, lift, depth, length, stance);
  return !Number.isNaN(lean)
    ? lean
    : whyNoPosture(balance, femur, tibia, trunk, ankle, lift, depth, length, stance);
}
