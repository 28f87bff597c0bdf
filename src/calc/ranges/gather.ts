/** What SUMIFS and its kin do with the cells that they find. */
import { CellError, ErrorType } from 'hyperformula';
import type { Issue } from '../../../functions/core/issue.ts';
import { Kind, type Range, valueAt } from '../../../functions/core/value.ts';

const noDivisor = new CellError(ErrorType.DIV_BY_ZERO);

export type Answer = number | CellError | Issue;

/** What is done with the cells that meet all criteria. */
export interface Gather {
  readonly name: string;
  /** Aggregates the cells of `values` that stand in `cells[from … to)`; null: all cells. Only those that `holds` count. */
  aggregate(
    values: Range,
    cells: Int32Array | null,
    from: number,
    to: number,
    holds: (i: number) => boolean,
  ): Answer;
  /** The results of all groups in one pass over values without errors; `met` marks the cells that count, null: all. */
  all(values: Range, of: Int32Array, count: number, met: Uint8Array | null): readonly Answer[];
}

export const always = (): boolean => true;

export const counting: Gather = {
  name: 'count',
  aggregate(_values, cells, from, to, holds) {
    if (holds === always) return to - from;
    let n = 0;
    for (let k = from; k < to; k++) if (holds(cells ? cells[k]! : k)) n++;
    return n;
  },
  all(_values, of, count, met) {
    const n = new Float64Array(count + 1);
    for (let i = 0; i < of.length; i++) if (!met || met[i] === 1) n[of[i]! + 1]!++;
    return Array.from(n.subarray(1));
  },
};

/** Sum and number of the numbers of each group; cells of no group are in place 0. */
function totals(
  values: Range,
  of: Int32Array,
  count: number,
  met: Uint8Array | null,
): { sums: Float64Array; counts: Float64Array } {
  const sums = new Float64Array(count + 1);
  const counts = new Float64Array(count + 1);
  const { kinds, numbers } = values;
  const size = of.length;
  if (!met && holdsOnlyNumbers(values)) {
    for (let i = 0; i < size; i++) {
      const g = of[i]! + 1;
      sums[g]! += numbers[i]!;
      counts[g]!++;
    }
    return { sums, counts };
  }
  for (let i = 0; i < size; i++) {
    if (met !== null && met[i] === 0) continue;
    const kind = kinds[i];
    if (kind !== Kind.number && kind !== Kind.date) continue;
    const g = of[i]! + 1;
    sums[g]! += numbers[i]!;
    counts[g]!++;
  }
  return { sums, counts };
}

const onlyNumbers = new WeakMap<Range, boolean>();
function holdsOnlyNumbers(range: Range): boolean {
  let only = onlyNumbers.get(range);
  if (only === undefined) {
    only = true;
    for (let i = 0; only && i < range.kinds.length; i++) only = range.kinds[i] === Kind.number;
    onlyNumbers.set(range, only);
  }
  return only;
}

export const summing: Gather = {
  name: 'sum',
  aggregate(values, cells, from, to, holds) {
    const { kinds, numbers } = values;
    let total = 0;
    for (let k = from; k < to; k++) {
      const i = cells ? cells[k]! : k;
      if (!holds(i)) continue;
      const kind = kinds[i];
      if (kind === Kind.number || kind === Kind.date) total += numbers[i]!;
      else if (kind === Kind.error) return valueAt(values, i) as Issue;
    }
    return total;
  },
  all: (values, of, count, met) => Array.from(totals(values, of, count, met).sums.subarray(1)),
};

// an error value among them is left out, as the cell engine does
export const averaging: Gather = {
  name: 'average',
  aggregate(values, cells, from, to, holds) {
    const { kinds, numbers } = values;
    let total = 0;
    let n = 0;
    for (let k = from; k < to; k++) {
      const i = cells ? cells[k]! : k;
      const kind = kinds[i];
      if ((kind !== Kind.number && kind !== Kind.date) || !holds(i)) continue;
      total += numbers[i]!;
      n++;
    }
    return n === 0 ? noDivisor : total / n;
  },
  all(values, of, count, met) {
    const { sums, counts } = totals(values, of, count, met);
    return Array.from({ length: count }, (_, g) =>
      counts[g + 1] === 0 ? noDivisor : sums[g + 1]! / counts[g + 1]!,
    );
  },
};

// an error value among them gives 0, as the cell engine does
const extreme = (name: string, start: number, join: (a: number, b: number) => number): Gather => ({
  name,
  aggregate(values, cells, from, to, holds) {
    const { kinds, numbers } = values;
    let so = start;
    for (let k = from; k < to; k++) {
      const i = cells ? cells[k]! : k;
      if (!holds(i)) continue;
      const kind = kinds[i];
      if (kind === Kind.number || kind === Kind.date) so = join(so, numbers[i]!);
      else if (kind === Kind.error) return 0;
    }
    return Number.isFinite(so) ? so : 0;
  },
  all(values, of, count, met) {
    const so = new Float64Array(count + 1).fill(start);
    const { kinds, numbers } = values;
    const most = start < 0;
    for (let i = 0; i < of.length; i++) {
      if ((met && met[i] === 0) || (kinds[i] !== Kind.number && kinds[i] !== Kind.date)) continue;
      const g = of[i]! + 1;
      if (most ? numbers[i]! > so[g]! : numbers[i]! < so[g]!) so[g] = numbers[i]!;
    }
    return Array.from(so.subarray(1), (r) => (Number.isFinite(r) ? r : 0));
  },
});

export const smallest = extreme('min', Number.POSITIVE_INFINITY, Math.min);
export const largest = extreme('max', Number.NEGATIVE_INFINITY, Math.max);
