import { invoke } from '../../../functions/core/invoke.ts';
import type { Argument } from '../../../functions/core/value.ts';
import { registry } from '../../../functions/registry.ts';
import type { ChartBand, ChartLine } from './data.ts';

/** What a function of the workbook gives for these arguments; null where it gives no number. */
export function ask(name: string, ...args: readonly Argument[]): number | null {
  const definition = registry.get(name);
  const value = definition ? invoke(definition, args) : null;
  return typeof value === 'number' && Number.isFinite(value) ? value : null;
}

/** A figure to three significant digits, or whole from a thousand on. */
export const short = (value: number): string => {
  const text = Math.abs(value) >= 1000 ? String(Math.round(value)) : String(Number(value.toPrecision(3)));
  return text.replace('-', '−');
};

/** Steps along which curved bands are drawn. */
const steps = 48;

/** The line through points and the 95 % interval for a new value, over the span of x; none without a spread of x. */
export function fitOf(
  x: Argument,
  y: Argument,
  from: number,
  to: number,
): { line: ChartLine; band: ChartBand | null } | null {
  const places = Array.from({ length: steps + 1 }, (_, step) => from + ((to - from) * step) / steps);
  const at = places.flatMap((place): [number, number][] => {
    const height = ask('COHORT.FIT', x, y, 'predict', place);
    return height === null ? [] : [[place, height]];
  });
  if (at.length < 2 || from === to) return null;
  const around = places.flatMap((place): [number, number, number][] => {
    const low = ask('COHORT.FIT', x, y, 'low', place);
    const high = ask('COHORT.FIT', x, y, 'high', place);
    return low === null || high === null ? [] : [[place, low, high]];
  });
  return {
    line: { is: 'fit', group: 0, at: [at[0]!, at.at(-1)!] },
    band: around.length > 1 ? { is: 'prediction', at: around } : null,
  };
}

/** The least and the greatest of some values; null for none. */
export function spanOf(values: Iterable<number>): readonly [number, number] | null {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return least <= most ? [least, most] : null;
}
