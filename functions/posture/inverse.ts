import { type Balance, given } from './balance.ts';

// The condition of balance solved for the leg instead of the lean. `ankle` is the ankle joint ahead of mid-foot and
// `turn` the cosine of the toe-out; knee and thigh are plain lengths, cm, before they are turned out.

/** How far ahead of the ankle joint the knee must be for a lean to balance; `thigh` is femur × cos depth. */
export function kneeAheadFor(
  balance: Balance,
  trunk: number,
  lean: number,
  ankle: number,
  thigh: number,
  turn: number,
): number {
  const rest = (balance.ankle + balance.knee + balance.hip) * ankle + balance.trunk * trunk;
  const legs = balance.knee + balance.hip;
  return (balance.hip * thigh * turn - given(balance, trunk, lean) - rest) / (legs * turn);
}

/** How far behind the knee the hip must be for a lean to balance; `shin` is tibia × sin shank. */
export function hipBehindFor(
  balance: Balance,
  trunk: number,
  lean: number,
  ankle: number,
  shin: number,
  turn: number,
): number {
  const rest = (balance.ankle + balance.knee + balance.hip) * ankle + balance.trunk * trunk;
  const legs = balance.knee + balance.hip;
  return (given(balance, trunk, lean) + rest + legs * shin * turn) / (balance.hip * turn);
}
