/** How a cell came about, as it is answered: plain data. */
import type { Source } from '../../../functions/core/source.ts';
import type { Place } from '../../calc/api.ts';
import type { ExplainedLean } from '../figure/figure-answers.ts';
import type { CellInfo } from '../sheet/sheet-answers.ts';

export interface WorkingStep {
  readonly name: string;
  readonly symbol?: string;
  readonly rule?: string;
  /** The value as computed, and as it is shown with its unit. */
  readonly value: number | string;
  readonly unit: string;
  readonly text: string;
  /** Names of the constants that go in; they are told in `constants`. */
  readonly constants: readonly string[];
}

export interface WorkingCall {
  readonly function: string;
  /** What the function answers, in a sentence. */
  readonly summary: string;
  /** As written, and with the values that went in. */
  readonly formula: string;
  readonly filled: string;
  readonly result: string;
  /** Why it has no value. */
  readonly sentence?: string;
  readonly rule: string;
  readonly steps: readonly WorkingStep[];
}

export interface WorkingConstant {
  readonly name: string;
  readonly text: string;
  readonly source: Source;
}

/** A place that a cell came from, or that uses it. */
export interface Relative {
  readonly place: Place;
  /** "Femur, row 2" or "Heights: Height, whole column". */
  readonly label: string;
  /** Its value, or how many it has. */
  readonly text: string;
}

/** How a cell came about. Plain data. */
export interface Working {
  readonly place: Required<Place>;
  readonly title: string;
  readonly display: string;
  readonly unit: string;
  readonly from: CellInfo['from'];
  readonly override: boolean;
  readonly name?: string;
  /** Why there is an error or a held value. */
  readonly sentence?: string;
  /** What its marks say. */
  readonly marked?: readonly string[];
  /** With names, and with this row's values and units; absent without a formula. */
  readonly formula?: string;
  readonly filled?: string;
  /** The column's formula, where the cell stands over it. */
  readonly columnFormula?: string;
  readonly calls: readonly WorkingCall[];
  /** Where the row's observed lean comes from, for that lean and for its parts. */
  readonly explained?: ExplainedLean;
  readonly constants: readonly WorkingConstant[];
  readonly sources: readonly Source[];
  readonly cautions: readonly string[];
  readonly doubts: readonly string[];
  readonly cameFrom: readonly Relative[];
  readonly usedBy: readonly Relative[];
  /** All of it as text, to be copied. */
  readonly text: string;
}
