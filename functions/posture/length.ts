import { type Issue, issue } from '../core/issue.ts';
import { type NumberParameter, within } from '../core/parameter.ts';

/** Length between two standing heights, cm; it must come out as `segment` is accepted elsewhere. */
export function lengthBetween(
  segment: NumberParameter,
  upper: string,
  upperHeight: number,
  lower: string,
  lowerHeight: number,
): number | Issue {
  const length = upperHeight - lowerHeight;
  // 49.6 − 34.6 must pass for 15: decimals leave a trace of rounding
  if (within(Math.round(length * 1e9) / 1e9, segment.bounds)) return length;
  return issue('#NUM!', 'length-out-of-bounds', {
    parameter: upper,
    received: upperHeight,
    details: {
      length,
      lower,
      upper_height: upperHeight,
      lower_height: lowerHeight,
      segment: segment.name,
      min: segment.bounds.min ?? 0,
      max: segment.bounds.max ?? 0,
    },
  });
}
