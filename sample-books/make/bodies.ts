import type { Random } from './random.ts';
import { rounded } from './random.ts';

export type Sex = 'female' | 'male';

/** One person's true measures: lengths cm, ankle range deg with weight on the foot, mass kg. */
export interface Body {
  readonly sex: Sex;
  readonly stature: number;
  readonly femur: number;
  readonly tibia: number;
  readonly trunk: number;
  readonly foot: number;
  readonly ankle: number;
  readonly mass: number;
}

interface Lengths {
  readonly mean: number;
  readonly sd: number;
}
interface Survey {
  readonly femur: Lengths;
  readonly tibia: Lengths;
  readonly trunk: Lengths;
  readonly foot: Lengths;
  /** Correlations of femur and tibia, and of femur and trunk. */
  readonly femurTibia: number;
  readonly femurTrunk: number;
  /** Femur, tibia and trunk together as a share of stature. */
  readonly share: number;
}

/**
 * Means and SD, cm: Gordon et al. 2014, NATICK/TR-15/007, public release. The correlations follow from the SD of the
 * ratios femur/tibia and trunk/femur in the same table by CV(a/b)² = CV(a)² + CV(b)² − 2 r CV(a) CV(b).
 */
const survey: Readonly<Record<Sex, Survey>> = {
  male: {
    femur: { mean: 40.927, sd: 2.842 },
    tibia: { mean: 41.875, sd: 2.457 },
    trunk: { mean: 53.981, sd: 3.34 },
    foot: { mean: 27.118, sd: 1.31 },
    femurTibia: 0.59,
    femurTrunk: -0.06,
    share: 0.779,
  },
  female: {
    femur: { mean: 37.941, sd: 2.405 },
    tibia: { mean: 40.319, sd: 2.591 },
    trunk: { mean: 48.974, sd: 2.934 },
    foot: { mean: 24.629, sd: 1.244 },
    femurTibia: 0.475,
    femurTrunk: 0.08,
    share: 0.7813,
  },
};

/** Not in the table, working assumptions of the invented data. */
const tibiaTrunk = 0.2;
const footTibia = 0.6;
const shareSd = 0.008;
const ankleOf = { mean: 36.5, sd: 4.8 };
const bodyMassIndex: Readonly<Record<Sex, Lengths>> = {
  male: { mean: 25.5, sd: 2.8 },
  female: { mean: 24, sd: 2.8 },
};

export function bodyOf(random: Random, sex: Sex): Body {
  const { femur, tibia, trunk, foot, femurTibia, femurTrunk, share } = survey[sex];
  const [a, b, c, d] = [random.normal(), random.normal(), random.normal(), random.normal()];
  const own = Math.sqrt(1 - femurTibia ** 2);
  const second = (tibiaTrunk - femurTibia * femurTrunk) / own;
  const zTibia = femurTibia * a + own * b;
  const zTrunk = femurTrunk * a + second * b + Math.sqrt(1 - femurTrunk ** 2 - second ** 2) * c;
  const zFoot = footTibia * zTibia + Math.sqrt(1 - footTibia ** 2) * d;
  const of = ({ mean, sd }: Lengths, z: number) => mean + sd * z;
  const lengths = {
    femur: of(femur, a),
    tibia: of(tibia, zTibia),
    trunk: of(trunk, zTrunk),
    foot: of(foot, zFoot),
  };
  const stature = (lengths.femur + lengths.tibia + lengths.trunk) / random.normal(share, shareSd);
  const index = bodyMassIndex[sex];
  return {
    sex,
    stature,
    ...lengths,
    ankle: random.normal(ankleOf.mean, ankleOf.sd),
    mass: random.normal(index.mean, index.sd) * (stature / 100) ** 2,
  };
}

/** Knee to wall, cm, at an ankle range: the knee's axis 5 cm behind its front, the ankle .25 of the foot ahead of the heel. */
export const wallOf = ({ tibia, foot }: Pick<Body, 'tibia' | 'foot'>, ankle: number): number =>
  tibia * Math.sin((ankle * Math.PI) / 180) - 0.75 * foot + 5;

/** As a tape reads it. */
export const taped = (random: Random, length: number, sd: number, step = 0.5): number =>
  rounded(random.normal(length, sd), step);
