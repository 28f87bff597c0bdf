/** What the figure answers: plain data. */
import type { Source } from '../../../functions/core/source.ts';

/** A point of the figure, cm; +x forward, +y up, origin on the floor under mid-foot. */
export type Point = readonly [x: number, y: number];

export interface PostureFigure {
  readonly heel: Point;
  readonly ball: Point;
  readonly toe: Point;
  readonly ankle: Point;
  readonly knee: Point;
  readonly hip: Point;
  readonly shoulder: Point;
  /** What stands over mid-foot: the bar, or with arms forward the body's centre of mass. */
  readonly bar: Point;
  readonly balanced: 'bar' | 'centre of mass';
  /** Heel to toe, cm; measured or from the lengths. */
  readonly footLength: number;
  /** Centre of mass of body and bar together; where body mass and bar load are known. */
  readonly centre?: Point;
  /** N·m, both sides, plus asks for extension; where body mass and bar load are known. */
  readonly hipMoment?: number;
  readonly kneeMoment?: number;
  /** Degrees. */
  readonly lean: number;
  readonly shank: number;
  readonly pitch: number;
  readonly kneeFlexion: number;
  readonly hipFlexion: number;
  readonly lift: number;
  readonly depth: number;
}

/** A set-up that no posture holds. */
export interface NoPosture {
  readonly sentence: string;
  /** The posture that comes nearest, and how far its load stays behind (−) mid-foot, cm. */
  readonly nearest?: { readonly posture: PostureFigure; readonly offset: number };
}

/** A figure, or the reason why there is none. */
export interface Told {
  readonly value: number | string | null;
  readonly sentence?: string;
}

/** What stands beside the drawing: angles deg, lengths cm, moments N·m. */
export interface FigureNumbers {
  /** SD of the lean at parallel for 1 cm and 2° of measuring error. */
  readonly leanError: Told;
  readonly deepest: Told;
  readonly limiter: Told;
  readonly kneeAhead: Told;
  readonly hipMoment: Told;
  readonly kneeMoment: Told;
  readonly hipShare: Told;
}

/** Where the lean at parallel comes from, deg; the items add up to lean − reference. */
export interface FigureParts {
  readonly lean: number;
  readonly reference: number;
  readonly referenceAnkle: number;
  readonly items: readonly { readonly name: string; readonly value: number }[];
}

/** One of the seven parts of an observed lean. */
export interface ExplainedPart {
  readonly part: 'reference' | 'femur' | 'tibia' | 'trunk' | 'ankle' | 'use' | 'balance';
  readonly label: string;
  /** Deg, and its SD from measuring and from placing points. */
  readonly value: number;
  readonly error: number;
  /** Whole degrees; those of all parts add up to the whole degrees of the lean. */
  readonly whole: number;
  /** True where the part is no larger than its error or comes to no whole degree; never for the reference. */
  readonly within: boolean;
  /** Why: goes on from "4° ". */
  readonly words: string;
}

/** Where an observed lean comes from, or why nothing can be said. Angles deg. */
export interface ExplainedLean {
  /** The row that has the observation, and its day where it has one. */
  readonly sheet: string;
  readonly row: number;
  readonly day: string | null;
  readonly lean: number;
  readonly error: number;
  readonly shin: number;
  readonly depth: number;
  /** Heel lift that it was seen with, cm. */
  readonly lift: number;
  /** Share of the ankle range in use; null where there is none to share. */
  readonly used: number | null;
  readonly parts: readonly ExplainedPart[];
  /** Why there are no parts. */
  readonly sentence?: string;
}

interface Control {
  readonly label: string;
  readonly from: 'row' | 'setting' | 'changed here' | 'default';
}
/** Something that can be tried out: a figure within limits, or one of some words. */
export type FigureControl =
  | (Control & {
      readonly measure: 'lift' | 'depth' | 'ankle' | 'stance' | 'bar' | 'mass';
      readonly unit: string;
      readonly least: number;
      readonly most: number;
      readonly step: number;
      readonly value: number | null;
    })
  | (Control & {
      readonly measure: 'placement';
      readonly words: readonly string[];
      readonly value: string;
    });

/** Where the lift on show can be written. `changes` is false when it stands there already. */
export type KeepLift =
  | {
      readonly column: string;
      readonly label: string;
      readonly text: string;
      readonly changes: boolean;
      readonly overFormula: boolean;
    }
  | { readonly sentence: string };

/** A row of another sheet in which this lifter was tested again. */
export interface OtherTest {
  readonly sheet: string;
  readonly row: number;
  /** Its sheet and day. */
  readonly title: string;
}

/** A second lifter in the same set-up, lengths scaled to the first one's stature; or this one at another test, as measured. */
export interface Beside {
  readonly row: number;
  readonly title: string;
  readonly scale: number;
  readonly by: 'stature' | 'femur + tibia + trunk' | 'same lifter';
  readonly stand: PostureFigure | NoPosture;
}

/** The lifter of a row at depth, flat and lifted; a set-up that no posture holds says why. */
export interface Figure {
  readonly sheet: string;
  readonly row: number;
  readonly title: string;
  /** The sheet in which the selected athlete was measured, where it is another one than the selected. */
  readonly of: string | null;
  /** One sentence: the minimum lean on the flat, and what the heel lift does; null without a posture on the flat. */
  readonly headline: string | null;
  /** The column of this sheet that computes the minimum lean, to show how. */
  readonly leanColumn: string | null;
  readonly flat: PostureFigure | NoPosture;
  readonly lifted: PostureFigure | NoPosture | null;
  /** SD of the lean for 1 cm and 2° of measuring error, degrees; null without a posture. */
  readonly leanError: number | null;
  /** Columns the figure could not find or that are blank in this row. */
  readonly missing: readonly string[];
  /** Those of them that the sheet has no column for, and a sheet that has all. */
  readonly absent: readonly string[];
  readonly elsewhere: string | null;
  readonly numbers: { readonly flat: FigureNumbers; readonly lifted: FigureNumbers | null };
  readonly parts: FigureParts | null;
  /** Where the observed lean comes from: of this row, else of this lifter's latest observed squat in another sheet. */
  readonly explained: ExplainedLean | null;
  /** Loads at the minimum lean by either rule and as observed; empty without body mass and bar. */
  readonly loads: readonly { readonly of: 'minimum' | 'system' | 'observed'; readonly loads: PostureLoads }[];
  readonly controls: readonly FigureControl[];
  readonly keep: KeepLift;
  /** Other rows that can be drawn beside this one. */
  readonly lifters: readonly {
    readonly row: number;
    readonly title: string;
    /** Another row of the same name: an earlier or later test of this lifter. */
    readonly same?: true;
  }[];
  /** Other sheets' tests of this lifter. */
  readonly tests: readonly OtherTest[];
  readonly beside: Beside | null;
}

/** What body and bar ask for in one posture: moments of both sides, N·m; the centre of pressure in % of the foot from the heel. */
export interface PostureLoads {
  readonly lean: number;
  readonly shin: number;
  readonly hip: Told;
  readonly knee: Told;
  /** Plus asks the calf to hold. */
  readonly ankle: Told;
  readonly share: Told;
  readonly centre: Told;
}

/** One step of ankle range, or the heel lift in use: what the model makes of it. Lengths cm, angles deg. */
export interface HeelOrAnkleRow {
  /** Deg added to the ankle range. */
  readonly gain: number;
  /** Heel lift, cm. */
  readonly lift: number;
  readonly lean: Told;
  /** Heel lift that the target lean would still need. */
  readonly needed: Told;
  readonly depth: Told;
  readonly share: Told;
  /** Centre of pressure, % of the foot from the heel. */
  readonly centre: Told;
}

/** Heel lift or more ankle range, for one lifter. */
export interface HeelOrAnkle {
  readonly ankle: number;
  readonly target: { readonly lean: number; readonly from: 'target' | 'observed' } | null;
  readonly rows: readonly HeelOrAnkleRow[];
  /** What weeks of stretching gained in studies, deg with 95 % interval. */
  readonly stretching: {
    readonly mean: number;
    readonly low: number;
    readonly high: number;
    readonly source: Source;
  };
  /** Minimal detectable change of the knee-to-wall test, cm, and as this lifter's ankle range, deg. */
  readonly detectable: { readonly wall: number; readonly ankle: number } | null;
}
