import type { ExplainedPart } from '../figure/figure-answers.ts';
import type { ChartKind } from './chart-record.ts';

/** One point: where it stands, whose it is, and the row it came from. */
export interface ChartPoint {
  readonly x: number;
  readonly y: number;
  /** Index in the chart's groups; 0 where there are none. */
  readonly group: number;
  /** What it is called: the athlete, else the row. */
  readonly name: string;
  readonly row: number;
  /** More to read at the point. */
  readonly note?: string;
  /** A second figure, drawn in a strip of its own: the monotony of a week. */
  readonly beside?: number;
  /** It lies outside a band or limit: its name is written at it. */
  readonly apart?: true;
}

/** A line through places; a break in it is a new line. */
export interface ChartLine {
  readonly is: 'fit' | 'equal' | 'trend' | 'mid-foot';
  readonly group: number;
  readonly at: readonly (readonly [x: number, y: number])[];
}

/** An area between two heights. */
export interface ChartBand {
  readonly is: 'prediction' | 'real change';
  readonly at: readonly (readonly [x: number, low: number, high: number])[];
}

/** A height that stands out, with its name. */
export interface ChartLevel {
  readonly is: 'bias' | 'limit' | 'zero' | 'median' | 'quartile';
  readonly y: number;
  readonly label: string;
  /** Only over this place of a chart with groups across. */
  readonly x?: number;
}

/** A bar that is made of the parts of an observed lean, deg. */
export interface ChartBar {
  readonly name: string;
  readonly lean: number;
  readonly parts: readonly Pick<ExplainedPart, 'part' | 'label' | 'value' | 'within'>[];
}

export interface ChartPanel {
  readonly title: string;
  readonly points: readonly ChartPoint[];
  readonly lines: readonly ChartLine[];
  readonly bands: readonly ChartBand[];
  readonly levels: readonly ChartLevel[];
  /** Bars, in the order of the points that read them. */
  readonly bars?: readonly ChartBar[];
}

/** Everything that is drawn, in the units in which it is shown; plain data. */
export interface ChartData {
  readonly title: string;
  readonly kind: ChartKind;
  readonly sheet: string;
  readonly x: { readonly label: string; readonly is: 'number' | 'date' | 'groups' };
  readonly y: { readonly label: string };
  /** What the points' second figure is, where they have one. */
  readonly beside?: { readonly label: string };
  readonly groups: readonly string[];
  readonly panels: readonly ChartPanel[];
  /** What the numbers come to, and what was left out, a sentence each. */
  readonly notes: readonly string[];
  /** Why there is nothing to see and what to do, where no panel has a point. */
  readonly needs?: string;
}

/** What the drawing of a kind gives; the rest of a chart's data is the same for all kinds. */
export type Content = Pick<ChartData, 'x' | 'y' | 'panels' | 'notes' | 'beside'>;
