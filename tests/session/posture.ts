/**
 * The bar rule of the posture model in closed form, written down here a second time so that tests do not ask the code for
 * what they expect from it. Plane statics and geometry: the bar stands over mid-foot, the thigh at a depth, the whole
 * ankle range used. Fractions of the foot: ball .740 and ankle .25 of its length ahead of the heel, ankle height
 * .039/.152 of it (Drillis & Contini 1966, in Winter, Biomechanics and Motor Control of Human Movement, Fig. 4.1; ball:
 * ANSUR II, Gordon et al. 2014), mid-foot .50.
 */
export interface Build {
  readonly femur: number;
  readonly tibia: number;
  readonly trunk: number;
  readonly ankle: number;
  readonly foot?: number;
}

const rad = (deg: number): number => (deg * Math.PI) / 180;

/** Lean in degrees with a high bar (1.00 along the trunk, .09 behind it), or undefined without a posture. */
export function leanOf({ femur, tibia, trunk, ankle, foot }: Build, lift = 0, depth = 0): number | undefined {
  const L = foot ?? (0.152 / 0.779) * (femur + tibia + trunk);
  const b = 0.74 * L;
  const pitch = Math.asin(lift / b);
  const ankleX = b + (0.25 * L - b) * Math.cos(pitch) + (0.039 / 0.152) * L * Math.sin(pitch);
  const midX = b + (0.5 * L - b) * Math.cos(pitch);
  const hipX = ankleX - midX + tibia * Math.sin(rad(ankle) + pitch) - femur * Math.cos(rad(depth));
  const A = trunk;
  const C = -0.09 * trunk;
  const reach = Math.hypot(A, C);
  if (Math.abs(hipX) > reach) return undefined;
  return ((Math.asin(-hipX / reach) - Math.atan2(C, A)) * 180) / Math.PI;
}

/** Ankle range from knee-to-wall, degrees: 5 cm from the knee's axis to its front. */
export const ankleFromWall = (distance: number, tibia: number, foot: number): number =>
  (Math.asin((distance + 0.75 * foot - 5) / tibia) * 180) / Math.PI;
