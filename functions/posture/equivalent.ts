import { type Issue, issue } from '../core/issue.ts';
import { defaultFoot } from '../tables/foot.ts';
import { boneBounds, rangeOfAnkle } from '../tables/parameters.ts';
import { asin, cos, sin } from './angle.ts';
import { type BarRulePlacement, barRule } from './balance.ts';
import { hipBehindFor, kneeAheadFor } from './inverse.ts';
import { leanOf } from './lean.ts';
import { newLeg, setLeg } from './leg.ts';
import { whyNoPosture } from './why.ts';

export type Stand = 'tibia' | 'femur' | 'ankle';

const leg = newLeg();

/**
 * What would give the lean of a lift on the flat, the foot held: the changed tibia or femur (cm) or ankle range (deg), or
 * the issue of why there is none.
 */
export function standsFor(
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
): number | Issue {
  const balance = barRule(placement);
  const length = foot ?? defaultFoot(femur, tibia, trunk);
  const lean = leanOf(balance, femur, tibia, trunk, ankle, lift, depth, length, stance);
  if (Number.isNaN(lean))
    return whyNoPosture(balance, femur, tibia, trunk, ankle, lift, depth, length, stance);
  // without a lift nothing has to change, also where no length or angle would be told apart
  if (lift === 0) return what === 'tibia' ? tibia : what === 'femur' ? femur : ankle;
  const turn = cos(stance);
  setLeg(leg, femur, tibia, length, 0, ankle, depth, stance);
  if (what === 'femur') {
    const level = cos(depth);
    if (level < 1e-12) return none(lift, 'femur', 'the thigh is upright');
    return kept(
      lift,
      'femur',
      hipBehindFor(balance, trunk, lean, leg.ankle, tibia * sin(ankle), turn) / level,
    );
  }
  const ahead = kneeAheadFor(balance, trunk, lean, leg.ankle, femur * cos(depth), turn);
  if (what === 'tibia') {
    if (ankle === 0) return none(lift, 'tibia', 'the shank is upright');
    return kept(lift, 'tibia', ahead / sin(ankle));
  }
  const sine = ahead / tibia;
  if (!(Math.abs(sine) < 1))
    return none(lift, 'ankle range', 'the knee would have to be further ahead than the tibia is long');
  return kept(lift, 'ankle', asin(sine));
}

const none = (lift: number, what: string, why: string): Issue =>
  issue('#NUM!', 'no-equivalent', { parameter: 'lift', received: lift, unit: 'cm', details: { what, why } });

function kept(lift: number, what: Stand, value: number): number | Issue {
  const { min, max } = what === 'ankle' ? rangeOfAnkle : boneBounds;
  if (value >= min && value <= max) return value;
  return issue('#NUM!', 'equivalent-out-of-bounds', {
    parameter: 'lift',
    received: lift,
    unit: 'cm',
    expected: `${min} to ${max}`,
    details: {
      what: what === 'ankle' ? 'an ankle range' : `a ${what}`,
      value,
      unit: what === 'ankle' ? ' deg' : ' cm',
    },
  });
}
