import { CellError, ErrorType } from 'hyperformula';
import type { Issue } from '../../../functions/core/issue.ts';
import { Kind, type Range, valueAt } from '../../../functions/core/value.ts';
import type { Criterion } from '../cell-engine/engine.ts';
import type { Inner } from '../cell-engine/values.ts';
import { criterionOf, groupsOf, meeting, testOf, worthGrouping } from './criteria.ts';

const badCriterion = new CellError(ErrorType.VALUE, 'Incorrect criterion.');
const unequal = new CellError(ErrorType.VALUE, 'Ranges need to be of equal length.');
const noDivisor = new CellError(ErrorType.DIV_BY_ZERO);

type Answer = number | CellError | Issue;

/** What is done with the cells that meet all criteria. */
interface Gather {
  readonly name: string;
  /** Folds the cells of `values` that stand in `cells[from … to)`; null: all cells. Only those that `holds` count. */
  fold(
    values: Range,
    cells: Int32Array | null,
    from: number,
    to: number,
    holds: (i: number) => boolean,
  ): Answer;
  /** The results of all groups in one pass over values without errors; `met` marks the cells that count, null: all. */
  all(values: Range, of: Int32Array, count: number, met: Uint8Array | null): readonly Answer[];
}

const always = (): boolean => true;

const counting: Gather = {
  name: 'count',
  fold(_values, cells, from, to, holds) {
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

const summing: Gather = {
  name: 'sum',
  fold(values, cells, from, to, holds) {
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
const averaging: Gather = {
  name: 'average',
  fold(values, cells, from, to, holds) {
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
  fold(values, cells, from, to, holds) {
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

interface Condition {
  readonly range: Range;
  readonly criterion: Criterion;
  readonly raw: Inner;
}

/** Results of one gathering over one column of values for the criteria that stay the same from call to call. */
interface Memory {
  readonly signature: string;
  readonly ranges: readonly Range[];
  /** By group of the range that is searched by; undefined where not asked yet. */
  readonly byGroup: (Answer | undefined)[];
  /** Groups asked for so far. The second is the sign that many will be: then all are computed in one pass. */
  asked: number;
}
const memories = new WeakMap<Range, Map<string, Memory>>();
const MEMORIES = 64;

const signatureOf = (raw: Inner): string => `${typeof raw}:${String(raw)}`;

/** Folds the values whose cells meet all conditions; `pairs` are ranges and criteria in turn. */
function gather(how: Gather, values: Range, pairs: readonly (Range | Inner)[]): Answer {
  const conditions: Condition[] = [];
  for (let k = 0; k < pairs.length; k += 2) {
    const raw = pairs[k + 1] as Inner;
    const criterion = criterionOf(raw);
    if (!criterion) return badCriterion;
    conditions.push({ range: pairs[k] as Range, criterion, raw });
  }
  for (const { range } of conditions)
    if (range.rows !== values.rows || range.columns !== values.columns) return unequal;

  // the rows of one group are looked at: that of the criterion of equality that leaves the fewest
  let by = -1;
  let group = -1;
  let fewest = Number.POSITIVE_INFINITY;
  conditions.forEach(({ range, criterion }, k) => {
    if (criterion.operator !== '=' || !worthGrouping(range)) return;
    const groups = groupsOf(range);
    const found = groups.find(criterion);
    if (found === undefined) return;
    const size = found < 0 ? 0 : groups.starts[found + 1]! - groups.starts[found]!;
    if (size < fewest) {
      fewest = size;
      by = k;
      group = found;
    }
  });
  const others = conditions.filter((_, k) => k !== by);
  const memory = memoryOf(how, values, conditions, others, by);
  const slot = group + 1;
  let answer = memory.byGroup[slot];
  if (answer === undefined) {
    memory.asked++;
    if (by < 0) answer = how.fold(values, null, 0, values.rows * values.columns, allHold(others));
    else if (group < 0) answer = how.fold(values, null, 0, 0, always);
    else {
      const { of, count, starts, cells } = groupsOf(conditions[by]!.range);
      if (memory.asked > 1 && !holdsErrors(values)) {
        const met = others.length === 0 ? null : cellsThatMeet(others);
        how.all(values, of, count, met).forEach((result, g) => {
          memory.byGroup[g + 1] = result;
        });
        return memory.byGroup[slot]!;
      }
      answer = how.fold(values, cells, starts[group]!, starts[group + 1]!, allHold(others));
    }
    memory.byGroup[slot] = answer;
  }
  return answer;
}

const withErrors = new WeakMap<Range, boolean>();
function holdsErrors(range: Range): boolean {
  let found = withErrors.get(range);
  if (found === undefined) {
    found = range.errors !== null && range.kinds.indexOf(Kind.error) >= 0;
    withErrors.set(range, found);
  }
  return found;
}

/** Marks with 1 the cells at which every condition is met. */
function cellsThatMeet(conditions: readonly Condition[]): Uint8Array {
  const [first, ...rest] = conditions.map(({ criterion, range, raw }) =>
    meeting(criterion, range, signatureOf(raw)),
  );
  if (rest.length === 0) return first!;
  return first!.map((met, i) => (rest.every((other) => other[i] === 1) ? met : 0));
}

function allHold(conditions: readonly Condition[]): (i: number) => boolean {
  const tests = conditions.map(({ criterion, range }) => testOf(criterion, range));
  const [first, second, ...rest] = tests;
  if (!first) return always;
  if (!second) return first;
  if (rest.length === 0) return (i) => first(i) && second(i);
  return (i) => tests.every((test) => test(i));
}

function memoryOf(
  how: Gather,
  values: Range,
  conditions: readonly Condition[],
  others: readonly Condition[],
  by: number,
): Memory {
  let all = memories.get(values);
  if (!all) {
    all = new Map();
    memories.set(values, all);
  }
  const signature = `${how.name} ${by} ${conditions.length} ${others.map((c) => signatureOf(c.raw)).join('\n')}`;
  const ranges = conditions.map((c) => c.range);
  const known = all.get(signature);
  if (known?.ranges.every((range, k) => range === ranges[k])) return known;
  // another version of a column: nothing remembered for the one before will be asked again
  if (known || all.size >= MEMORIES) all.clear();
  const memory: Memory = { signature, ranges, byGroup: [], asked: 0 };
  all.set(signature, memory);
  return memory;
}

const several =
  (how: Gather) =>
  (values: Range, ...pairs: readonly (Range | Inner)[]): Answer =>
    gather(how, values, pairs);
const single =
  (how: Gather) =>
  (range: Range, criterion: Inner, values?: Range): Answer =>
    gather(how, values ?? range, [range, criterion]);

/** The conditional functions on arguments that are coerced already. */
export const conditional = {
  SUMIF: single(summing),
  COUNTIF: single(counting),
  AVERAGEIF: single(averaging),
  SUMIFS: several(summing),
  COUNTIFS: (...pairs: readonly (Range | Inner)[]): Answer => gather(counting, pairs[0] as Range, pairs),
  AVERAGEIFS: several(averaging),
  MINIFS: several(extreme('min', Number.POSITIVE_INFINITY, Math.min)),
  MAXIFS: several(extreme('max', Number.NEGATIVE_INFINITY, Math.max)),
} as const;
