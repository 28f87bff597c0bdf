import type { Step } from '../core/define.ts';
import { isIssue } from '../core/issue.ts';
import { type BarRulePlacement, barRule } from './balance.ts';
import { type Stand, standsFor } from './equivalent.ts';
import { leanSteps, step } from './steps.ts';

/** The working of a lift's equivalent: the lean with the lift, then what gives it on the flat. */
export function equivalentSteps(
  what: Stand,
  lift: number,
  femur: number,
  tibia: number,
  trunk: number,
  ankle: number,
  depth: number,
  placement: BarRulePlacement,
  foot: number | undefined,
  stance: number,
): Step[] {
  const same = standsFor(what, lift, femur, tibia, trunk, ankle, depth, placement, foot, stance);
  const unit = what === 'ankle' ? 'deg' : 'cm';
  const now = { femur, tibia, ankle }[what];
  return [
    ...leanSteps(barRule(placement), femur, tibia, trunk, ankle, lift, depth, placement, foot, stance),
    step(`The lifter’s ${what}`, '', 'as measured', now, unit),
    step(
      `${what} with that lean on the flat`,
      '',
      'A sinβ + C cosβ = D, foot fixed',
      isIssue(same) ? 'none' : same,
      unit,
    ),
    step(
      'Equivalent of the heel lift',
      '',
      what === 'femur' ? 'as measured less changed' : 'changed less as measured',
      isIssue(same) ? 'none' : what === 'femur' ? now - same : same - now,
      unit,
    ),
  ];
}
