import { SimpleRangeValue } from 'hyperformula';
import type { Issue } from '../../../functions/core/issue.ts';
import type { Range } from '../../../functions/core/value.ts';
import { cellEngine } from '../cell-engine/engine.ts';
import { found, readNumber } from './coerce.ts';
import { momentsOf } from './moments.ts';
import type { Area } from './plan-nodes.ts';
import { divisionByZero } from './problems.ts';
import { isNumberTag, Tag, Vector } from './vector.ts';

/**
 * SUM and its kin. Cells of ranges and references that hold no number are skipped; a value that is written or computed
 * counts as the number it stands for. A whole column is computed once and remembered.
 */
type Takes =
  /** Numbers only. */
  | 'numbers'
  /** Yes/no as 1 or 0 and text as 0 too (the functions that end in A). */
  | 'all'
  /** 1 for each number. */
  | 'count'
  /** 1 for each cell that is not blank. */
  | 'filled';

/** An aggregate that joins one number after the other; areas may be computed on their own and joined. */
export interface Joining {
  readonly takes: Takes;
  readonly map?: (x: number) => number;
  readonly start: number;
  readonly join: (so: number, next: number) => number;
  /** `join` is addition. */
  readonly adds?: boolean;
  readonly end: (so: number, count: number) => number | Issue;
}
/** An aggregate that needs all numbers at once. */
export interface Gathering {
  readonly takes: Takes;
  readonly of: (values: Float64Array, n: number, name: string) => number | Issue;
}
export type Aggregate = Joining | Gathering;

const add = (so: number, next: number): number => so + next;
const same = (so: number): number => so;
const finite = (so: number): number => (Number.isFinite(so) ? so : 0);
const adding = (takes: Takes, end: Joining['end'] = same, map?: (x: number) => number): Joining => ({
  takes,
  start: 0,
  join: add,
  adds: true,
  end,
  ...(map ? { map } : {}),
});
const mean = (total: number, count: number): number | Issue => (count === 0 ? divisionByZero : total / count);
const largest = (takes: Takes): Joining => ({
  takes,
  start: Number.NEGATIVE_INFINITY,
  join: Math.max,
  end: finite,
});
const smallest = (takes: Takes): Joining => ({
  takes,
  start: Number.POSITIVE_INFINITY,
  join: Math.min,
  end: finite,
});
const spread = (takes: Takes, sample: boolean, root: boolean): Gathering => ({
  takes,
  of: (values, n, name) => {
    const divisor = sample ? n - 1 : n;
    if (divisor < 1) return divisionByZero;
    const moments = momentsOf(values, n);
    if (!moments) return byEngine(name, values, n);
    const variance = moments.variance(divisor);
    return root ? Math.sqrt(variance) : variance;
  },
});

/** Numbers beyond what plain doubles can square are left to the cell engine. */
function byEngine(name: string, values: Float64Array, n: number): number | Issue {
  const value = SimpleRangeValue.onlyValues(Array.from(values.subarray(0, n), (x) => [x]));
  const result = cellEngine().evaluate({
    type: 'FUNCTION_CALL',
    procedureName: name,
    args: [{ type: 'NUMBER', value }],
  });
  const out = new Vector(1);
  out.setInner(0, result as number, name);
  return out.tags[0] === Tag.error ? out.errorAt(0) : out.numbers[0]!;
}

/** What each of SUM and its kin adds up. */
export const aggregates = {
  sum: adding('numbers'),
  sumOfSquares: adding('numbers', same, (x) => x * x),
  product: { takes: 'numbers', start: 1, join: (so, x) => so * x, end: same },
  largest: largest('numbers'),
  smallest: smallest('numbers'),
  largestOfAll: largest('all'),
  smallestOfAll: smallest('all'),
  count: adding('count'),
  countFilled: adding('filled'),
  mean: adding('numbers', mean),
  meanOfAll: adding('all', mean),
  variance: spread('numbers', true, false),
  variancePopulation: spread('numbers', false, false),
  sd: spread('numbers', true, true),
  sdPopulation: spread('numbers', false, true),
  varianceOfAll: spread('all', true, false),
  variancePopulationOfAll: spread('all', false, false),
  sdOfAll: spread('all', true, true),
  sdPopulationOfAll: spread('all', false, true),
} as const satisfies Readonly<Record<string, Aggregate>>;

/** What `contribution` found; an error is in `found.error`. */
export const given = { number: 0 };
export const NOTHING = 0;
export const NUMBER = 1;
export const FAILED = 2;

/** What element i adds to an aggregate: nothing, `given.number`, or an error. */
export function contribution(aggregate: Aggregate, vector: Vector, i: number, isCell: boolean): number {
  const tag = vector.tags[i]!;
  if (aggregate.takes === 'count') {
    given.number = isNumberTag(tag) || (!isCell && tag !== Tag.error && readNumber(vector, i)) ? 1 : 0;
    return NUMBER;
  }
  if (aggregate.takes === 'filled') {
    given.number = isCell && tag === Tag.blank ? 0 : 1;
    return NUMBER;
  }
  if (isNumberTag(tag)) given.number = vector.numbers[i]!;
  else if (tag === Tag.error || !isCell) {
    if (!readNumber(vector, i)) return FAILED;
    given.number = found.value;
  } else if (aggregate.takes === 'all' && tag !== Tag.blank)
    given.number = tag === Tag.yesNo ? vector.numbers[i]! : 0;
  else return NOTHING;
  if ('map' in aggregate && aggregate.map) given.number = aggregate.map(given.number);
  return NUMBER;
}

/** Where an aggregate stands after some cells. */
interface Part {
  readonly so: number;
  readonly count: number;
}

const parts = new WeakMap<Range, Map<Aggregate, Part | Issue>>();
const gathered = new WeakMap<Range, Map<Aggregate, number | Issue>>();

function remembered<T>(
  memory: WeakMap<Range, Map<Aggregate, T>>,
  aggregate: Aggregate,
  area: Area,
  make: () => T,
): T {
  if (!area.range) return make();
  let of = memory.get(area.range);
  if (!of) {
    of = new Map();
    memory.set(area.range, of);
  }
  let value = of.get(aggregate);
  if (value === undefined) {
    value = make();
    of.set(aggregate, value);
  }
  return value;
}

/** An area computed on its own. */
export const partOf = (aggregate: Joining, area: Area): Part | Issue =>
  remembered(parts, aggregate, area, () => {
    const { vector } = area;
    const { numbers } = vector;
    const size = area.rows * area.columns;
    let so = aggregate.start;
    if (
      vector.plain &&
      aggregate.adds &&
      !aggregate.map &&
      aggregate.takes !== 'count' &&
      aggregate.takes !== 'filled'
    ) {
      for (let i = 0; i < size; i++) so += numbers[i]!;
      return { so, count: size };
    }
    let count = 0;
    for (let i = 0; i < size; i++) {
      const what = contribution(aggregate, vector, i, true);
      if (what === FAILED) return found.error;
      if (what === NOTHING) continue;
      so = aggregate.join(so, given.number);
      count++;
    }
    return { so, count };
  });

/** The numbers of an area behind the n that are in `room`; the new n, −1 for an error. */
export function gatherArea(aggregate: Gathering, area: Area, n: number): number {
  const size = area.rows * area.columns;
  enlarge(n + size);
  let count = n;
  for (let i = 0; i < size; i++) {
    const what = contribution(aggregate, area.vector, i, true);
    if (what === FAILED) return -1;
    if (what === NUMBER) room.numbers[count++] = given.number;
  }
  return count;
}

/** Where numbers are gathered; used by one aggregate at a time. */
export const room = { numbers: new Float64Array(256) };
export function enlarge(size: number): void {
  if (room.numbers.length >= size) return;
  const larger = new Float64Array(size * 2);
  larger.set(room.numbers);
  room.numbers = larger;
}

/** The result of an area alone. */
export function ofArea(name: string, aggregate: Aggregate, area: Area): number | Issue {
  if ('of' in aggregate)
    return remembered(gathered, aggregate, area, () => {
      const size = area.rows * area.columns;
      if (area.vector.plain) return aggregate.of(area.vector.numbers, size, name);
      const n = gatherArea(aggregate, area, 0);
      return n < 0 ? found.error : aggregate.of(room.numbers, n, name);
    });
  const part = partOf(aggregate, area);
  return 'so' in part ? aggregate.end(part.so, part.count) : part;
}
