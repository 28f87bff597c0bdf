import type { Dimension, Per } from './dimension.ts';
import { displayUnitOf } from './unit.ts';

/** What a number measures, as far as it is known. */
export interface Unit {
  readonly dimension?: Dimension | undefined;
  readonly unit?: string | undefined;
  readonly per?: Per | undefined;
}

/** A unit as it is written behind a figure and in a heading. */
export const unitSign = (unit: string): string => (unit === 'deg' ? '°' : unit);

/** The unit of a measure: `cm`, `°`, `kg per week`, `per day`; empty for a plain number. */
export const signOf = (measure: Unit): string => written(measure, unitSign);

/** The same for files, in letters that every program reads: `deg`. */
export const unitWords = (measure: Unit): string => written(measure, (unit) => unit);

function written({ dimension, unit, per }: Unit, sign: (unit: string) => string): string {
  const shown = dimension && displayUnitOf({ dimension, ...(unit === undefined ? {} : { unit }) });
  const text = shown ? sign(shown.unit) : '';
  return per === undefined ? text : `${text} per ${per}`.trim();
}
