import { carryOf } from '../tables/placements.ts';
import { cos, sin } from './angle.ts';
import { type BarRulePlacement, FEET, newBalance, setBalance } from './balance.ts';
import type { FigurePoints, Point } from './figure.ts';

/**
 * The centre of mass of body and bar together in a posture, cm from mid-foot; trunk cm, masses kg. The feet stand over
 * mid-foot, their own centre half way up to the ankle.
 */
export function systemCentre(
  { ankle, knee, hip, lean }: Pick<FigurePoints, 'ankle' | 'knee' | 'hip' | 'lean'>,
  trunk: number,
  placement: BarRulePlacement,
  mass: number,
  bar: number,
): Point {
  const all = setBalance(newBalance(), carryOf(placement), mass, bar);
  const ahead = trunk * (all.trunk + all.sin * sin(lean) + all.cos * cos(lean));
  const above = trunk * (all.sin * cos(lean) - all.cos * sin(lean));
  return [
    (all.ankle * ankle[0] + all.knee * knee[0] + all.hip * hip[0] + ahead) / all.weight,
    ((all.ankle + (mass * FEET) / 2) * ankle[1] + all.knee * knee[1] + all.hip * hip[1] + above) / all.weight,
  ];
}
