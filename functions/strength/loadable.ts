import { defineFunction } from '../core/define.ts';
import { isIssue, issue } from '../core/issue.ts';
import { optionOr, range } from '../core/parameter.ts';
import { definition } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { loadParameter } from '../tables/lifting.ts';
import { pairSums } from '../tables/plates.ts';

/** Within this, kg, two weights are the same weight. */
const SAME = 1e-6;

/** STRENGTH.LOADABLE(load, bar, plates, [mode="nearest"]): kg. @throws nothing; out of reach of "down" or "up" #N/A, a plate ≤ 0 #NUM!. */
export default defineFunction({
  name: 'STRENGTH.LOADABLE',
  family: 'strength',
  summary:
    'Weight that a bar and pairs of plates can make: the nearest to a load, or the next below or above it.',
  searchWords: ['plates', 'round', 'barbell', 'loading', 'plate calculator'],
  parameters: [
    loadParameter('load', 'the weight asked for'),
    loadParameter('bar', 'mass of the bar with its collars'),
    range('plates', 'number', 'kg', 'available plate sizes, each once', {
      cells: { above: 0, because: 'A plate weighs something.' },
    }),
    optionOr(
      'nearest',
      'mode',
      ['nearest', 'down', 'up'],
      'which weight, when the load itself cannot be made',
    ),
  ],
  result: { is: 'number', unit: 'kg', about: 'weight on the bar, bar included' },
  rule: 'bar + 2 · (any number of plates of each size, up to 20 pairs in all); the lower of two equally near',
  sources: [definition('plates hang in pairs')],
  notes: [
    'Each size may be used any number of times: the function does not know how many you own.',
    '"down" below the bar and "up" above the heaviest possible weight give #N/A. With no plates the bar alone remains.',
  ],
  examples: [
    {
      formula: '=STRENGTH.LOADABLE(101.3, 20, {25;20;15;10;5;2.5;1.25})',
      gives: 102.5,
      says: '2.5 kg steps: 1.2 up, 1.3 down',
    },
    { formula: '=STRENGTH.LOADABLE(101.3, 20, {25;20;15;10;5;2.5;1.25}, "down")', gives: 100 },
    { formula: '=STRENGTH.LOADABLE(15, 20, {25;20}, "down")', gives: '#N/A', says: 'the bar is heavier' },
  ],
  seeAlso: ['STRENGTH.LOAD'],
  typical: [101, 20, columnRange(25, 20, 15, 10, 5, 2.5, 1.25), 'nearest'],
  compute: (load, bar, plates, mode) => {
    const sums = pairSums(plates);
    if (isIssue(sums)) return { ...sums, parameter: 'plates' };
    const target = (load - bar) / 2;
    const above = firstAtLeast(sums, target - SAME);
    const up = sums[above];
    const down = up !== undefined && up <= target + SAME ? up : sums[above - 1];
    const heaviest = bar + 2 * sums[sums.length - 1]!;
    if (mode === 'down' && down === undefined) return outOfReach(load, mode, `the bar's ${bar} kg or more`);
    if (mode === 'up' && up === undefined) return outOfReach(load, mode, `at most ${heaviest} kg`);
    if (mode === 'up' || down === undefined) return bar + 2 * (up ?? 0);
    if (mode === 'down' || up === undefined) return bar + 2 * down;
    return bar + 2 * (up - target < target - down - SAME ? up : down);
  },
});

const outOfReach = (load: number, mode: string, expected: string) =>
  issue('#N/A', 'not-loadable', { parameter: 'load', received: load, expected, details: { mode } });

/** Index of the first value that is `least` or more; the length when there is none. */
function firstAtLeast(ascending: Float64Array, least: number): number {
  let low = 0;
  let high = ascending.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ascending[middle]! < least) low = middle + 1;
    else high = middle;
  }
  return low;
}
