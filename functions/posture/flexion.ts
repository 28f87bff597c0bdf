import { atan2 } from '../core/elementary/arc.ts';
import { cos, RAD, sin } from './angle.ts';

/** Knee flexion, deg, of a shank from the vertical and a depth of the thigh above the horizontal. */
export const kneeFlexion = (shank: number, depth: number): number => 90 + shank - depth;

/**
 * Hip flexion, deg: 180 less the angle between trunk and thigh in space, spine straight, knees turned out.
 * Toes straight ahead (stance 0) it is 90 + lean − depth while lean and depth differ by no more than 90°.
 */
export function hipFlexion(lean: number, depth: number, stance: number): number {
  const forward = sin(lean);
  const up = cos(lean);
  const thigh = cos(depth);
  const ahead = thigh * cos(stance);
  const out = thigh * sin(stance);
  const down = sin(depth);
  // arc tangent instead of arc cosine: no digits lost near 0 and 180
  const across = forward * down + up * ahead;
  return 180 - atan2(Math.sqrt(out * out + across * across), forward * ahead - up * down) / RAD;
}
