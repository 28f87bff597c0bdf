/** What the seven parts of an observed lean are called, and why each is there. */

export const partNames = ['reference', 'femur', 'tibia', 'trunk', 'ankle', 'use', 'balance'] as const;
export type PartName = (typeof partNames)[number];

export const labelOfPart: Readonly<Record<PartName, string>> = {
  reference: 'Average build',
  femur: 'Femur',
  tibia: 'Tibia',
  trunk: 'Trunk',
  ankle: 'Ankle range',
  use: 'Range not used',
  balance: 'Bar or back',
};

interface About {
  readonly ankle: number;
  readonly referenceAnkle: number;
  /** Share of the ankle range in use; null where it is not known. */
  readonly share: number | null;
}

/** Why a part adds to the lean (above 0) or takes from it; follows its degrees. */
export function wordsOfPart(part: PartName, value: number, { ankle, referenceAnkle, share }: About): string {
  const more = value >= 0;
  switch (part) {
    case 'reference':
      return `is the minimum lean of average proportions with an ankle range of ${Math.round(referenceAnkle)}°, at this depth`;
    case 'femur':
      return `because the femur is ${more ? 'long' : 'short'} for this build`;
    case 'tibia':
      return `because the tibia is ${more ? 'short' : 'long'} for this build`;
    case 'trunk':
      return `because the trunk is ${more ? 'short' : 'long'} for this build`;
    case 'ankle':
      return `because the ankle range is ${Math.round(ankle)}°, ${more ? 'below' : 'above'} the ${Math.round(referenceAnkle)}° of reference`;
    case 'use':
      return more
        ? `because ${share === null ? 'part' : fractionInWords(1 - share)} of the ankle range is not used`
        : 'because the shin is further forward than the ankle range: the heel rises, or the ankle test was too low';
    case 'balance':
      return more
        ? 'beyond what keeps the bar over mid-foot: bar ahead, rounded back, or points placed wrong'
        : 'short of what keeps the bar over mid-foot: bar behind, or points placed wrong';
  }
}

const FRACTIONS: readonly (readonly [number, string])[] = [
  [0, 'almost nothing'],
  [0.1, 'a tenth'],
  [0.2, 'a fifth'],
  [0.25, 'a quarter'],
  [1 / 3, 'a third'],
  [0.4, 'two fifths'],
  [0.5, 'half'],
  [0.6, 'three fifths'],
  [2 / 3, 'two thirds'],
  [0.75, 'three quarters'],
  [0.9, 'nine tenths'],
  [1, 'all'],
];
/** A share this near to a fraction is called by it; others are "about" the nearest. */
const NEAR = 0.015;

/** A share as people say it: a quarter, about a third. */
export function fractionInWords(share: number): string {
  const [value, words] = FRACTIONS.reduce((best, one) =>
    Math.abs(one[0] - share) < Math.abs(best[0] - share) ? one : best,
  );
  return Math.abs(value - share) <= NEAR || value === 0 || value === 1 ? words : `about ${words}`;
}
