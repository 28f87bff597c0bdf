import { acos, atan2 } from '../core/elementary/arc.ts';
import { RAD } from './angle.ts';

/**
 * Going down from `from` to `to` (deg), the first x at which mean + c·cos x + s·sin x is above `level`, which is `from`
 * itself when it is above there; −∞ when it stays below.
 */
export function firstAbove(
  mean: number,
  c: number,
  s: number,
  level: number,
  from: number,
  to: number,
): number {
  const swing = Math.sqrt(c * c + s * s);
  const height = (level - mean) / swing;
  if (!(height < 1)) return Number.NEGATIVE_INFINITY;
  if (height <= -1) return from;
  // the wave stands above the level within ± acos(height) of its crest: coming from above it is met at the upper end
  const half = acos(height) / RAD;
  const upper = atan2(s, c) / RAD + half;
  let behind = (from - upper) % 360;
  if (behind < 0) behind += 360;
  // within the stretch above the level already; touching it at the lower end is leaving it
  if (behind > 360 - 2 * half + 1e-9 || behind > 360 - 1e-9) return from;
  const at = from - behind;
  return at < to ? Number.NEGATIVE_INFINITY : at;
}

/** The same for falling below `level`. */
export const firstBelow = (
  mean: number,
  c: number,
  s: number,
  level: number,
  from: number,
  to: number,
): number => firstAbove(-mean, -c, -s, -level, from, to);
