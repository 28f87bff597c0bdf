import { assumption, type Constant, constant } from '../core/source.ts';
import {
  armMass,
  gobletArmsAhead,
  gobletArmsAlong,
  hatCentre,
  hatMass,
  levelArms,
  trunkHeadCentre,
  trunkHeadMass,
} from './dempster.ts';

const placementWords = ['high-bar', 'low-bar', 'front', 'goblet', 'arms-forward'] as const;
export type Placement = (typeof placementWords)[number];

/**
 * How a load is carried. The bar lies `along` trunk lengths from the hip up the trunk line and `ahead` (+) or behind (−)
 * of that line. Head, arms and trunk have their centre of mass U ahead of the hip, for a body mass of 1 and a trunk of 1:
 * U = upperSin sinβ + upperCos cosβ + upperLevel.
 */
export interface Carry {
  readonly word: Placement;
  readonly along: number;
  readonly ahead: number;
  readonly upperSin: number;
  readonly upperCos: number;
  readonly upperLevel: number;
  readonly constants: readonly Constant[];
}

const trunkWithHead = trunkHeadMass.value * trunkHeadCentre.value;
const arms = 2 * armMass.value;

function bar(
  word: Placement,
  along: number,
  ahead: number,
): Pick<Carry, 'word' | 'along' | 'ahead' | 'constants'> {
  const source = assumption(
    'where such a bar lies on a trunk of this length; this project’s choice, no published source',
  );
  return {
    word,
    along,
    ahead,
    constants: [
      constant(`bar along the trunk, ${word}`, along, 'of trunk length', source),
      constant(`bar ahead of the trunk line, ${word}`, ahead, 'of trunk length', source),
    ],
  };
}
const armsAtTrunk = { upperSin: hatMass.value * hatCentre.value, upperCos: 0, upperLevel: 0 };

const highBar: Carry = { ...bar('high-bar', 1, -0.09), ...armsAtTrunk };
const lowBar: Carry = { ...bar('low-bar', 0.9, -0.11), ...armsAtTrunk };
const front: Carry = { ...bar('front', 0.98, 0.12), ...armsAtTrunk };
const gobletBar = bar('goblet', 0.8, 0.45);
const goblet: Carry = {
  ...gobletBar,
  constants: [
    ...gobletBar.constants,
    trunkHeadMass,
    trunkHeadCentre,
    armMass,
    gobletArmsAlong,
    gobletArmsAhead,
  ],
  upperSin: trunkWithHead + arms * gobletArmsAlong.value,
  upperCos: arms * gobletArmsAhead.value,
  upperLevel: 0,
};
const armsForward: Carry = {
  word: 'arms-forward',
  along: 0,
  ahead: 0,
  upperSin: trunkWithHead + arms,
  upperCos: 0,
  upperLevel: arms * levelArms.value,
  constants: [trunkHeadMass, trunkHeadCentre, armMass, levelArms],
};

/** The constants of a placement. A switch over the few words: this runs a million times in a column. */
export function carryOf(word: Placement): Carry {
  switch (word) {
    case 'high-bar':
      return highBar;
    case 'low-bar':
      return lowBar;
    case 'front':
      return front;
    case 'goblet':
      return goblet;
    case 'arms-forward':
      return armsForward;
  }
}
