import { SimpleRangeValue } from 'hyperformula';
import type { Issue } from '../../../functions/core/issue.ts';
import type { Range } from '../../../functions/core/value.ts';
import { cellEngine } from '../cell-engine/engine.ts';
import { found, readNumber } from './coerce.ts';
import { divisionByZero, isNumberTag, Lanes, Tag, wrongCount } from './lanes.ts';
import { momentsOf } from './moments.ts';
import { type Area, constantNode, type Frame, fixedScalar, type PlanNode, varyingScalar } from './nodes.ts';

/**
 * SUM and its kin. Cells of ranges and references that hold no number are skipped; a value that is written or computed
 * counts as the number it stands for. A whole column is folded once and remembered.
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

/** A fold that joins one number after the other; areas may be folded on their own and joined. */
interface Joining {
  readonly takes: Takes;
  readonly map?: (x: number) => number;
  readonly start: number;
  readonly join: (so: number, next: number) => number;
  /** `join` is addition. */
  readonly adds?: boolean;
  readonly end: (so: number, count: number) => number | Issue;
}
/** A fold that needs all numbers at once. */
interface Gathering {
  readonly takes: Takes;
  readonly of: (values: Float64Array, n: number, name: string) => number | Issue;
}
type Fold = Joining | Gathering;

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
  const out = new Lanes(1);
  out.setInner(0, result as number, name);
  return out.tags[0] === Tag.error ? out.errorAt(0) : out.numbers[0]!;
}

const folds: ReadonlyMap<string, Fold> = new Map<string, Fold>([
  ['SUM', adding('numbers')],
  ['SUMSQ', adding('numbers', same, (x) => x ** 2)],
  ['PRODUCT', { takes: 'numbers', start: 1, join: (so, x) => so * x, end: same }],
  ['MAX', largest('numbers')],
  ['MIN', smallest('numbers')],
  ['MAXA', largest('all')],
  ['MINA', smallest('all')],
  ['COUNT', adding('count')],
  ['COUNTA', adding('filled')],
  ['AVERAGE', adding('numbers', mean)],
  ['AVERAGEA', adding('all', mean)],
  ['VAR.S', spread('numbers', true, false)],
  ['VAR.P', spread('numbers', false, false)],
  ['STDEV.S', spread('numbers', true, true)],
  ['STDEV.P', spread('numbers', false, true)],
  ['VARA', spread('all', true, false)],
  ['VARPA', spread('all', false, false)],
  ['STDEVA', spread('all', true, true)],
  ['STDEVPA', spread('all', false, true)],
]);
const aliases: Readonly<Record<string, string>> = {
  VAR: 'VAR.S',
  VARS: 'VAR.S',
  VARP: 'VAR.P',
  STDEV: 'STDEV.S',
  STDEVS: 'STDEV.S',
  STDEVP: 'STDEV.P',
};
/** What the first argument of SUBTOTAL asks for; 101–111 likewise. */
const subtotals = [
  '',
  'AVERAGE',
  'COUNT',
  'COUNTA',
  'MAX',
  'MIN',
  'PRODUCT',
  'STDEV.S',
  'STDEV.P',
  'SUM',
  'VAR.S',
  'VAR.P',
];
export const subtotalName = (mode: number): string | undefined => subtotals[mode > 100 ? mode - 100 : mode];

/** What `contribution` found; an error is in `found.error`. */
let number = 0;
const NOTHING = 0;
const NUMBER = 1;
const FAILED = 2;

/** What lane i adds to a fold: nothing, `number`, or an error. */
function contribution(fold: Fold, lanes: Lanes, i: number, isCell: boolean): number {
  const tag = lanes.tags[i]!;
  if (fold.takes === 'count') {
    number = isNumberTag(tag) || (!isCell && tag !== Tag.error && readNumber(lanes, i)) ? 1 : 0;
    return NUMBER;
  }
  if (fold.takes === 'filled') {
    number = isCell && tag === Tag.blank ? 0 : 1;
    return NUMBER;
  }
  if (isNumberTag(tag)) number = lanes.numbers[i]!;
  else if (tag === Tag.error || !isCell) {
    if (!readNumber(lanes, i)) return FAILED;
    number = found.value;
  } else if (fold.takes === 'all' && tag !== Tag.blank) number = tag === Tag.yesNo ? lanes.numbers[i]! : 0;
  else return NOTHING;
  if ('map' in fold && fold.map) number = fold.map(number);
  return NUMBER;
}

/** Where a fold stands after some cells. */
interface Part {
  readonly so: number;
  readonly count: number;
}

const parts = new WeakMap<Range, Map<Fold, Part | Issue>>();
const gathered = new WeakMap<Range, Map<Fold, number | Issue>>();

function remembered<T>(memory: WeakMap<Range, Map<Fold, T>>, fold: Fold, area: Area, make: () => T): T {
  if (!area.range) return make();
  let of = memory.get(area.range);
  if (!of) {
    of = new Map();
    memory.set(area.range, of);
  }
  let value = of.get(fold);
  if (value === undefined) {
    value = make();
    of.set(fold, value);
  }
  return value;
}

/** An area folded on its own. */
const partOf = (fold: Joining, area: Area): Part | Issue =>
  remembered(parts, fold, area, () => {
    const { lanes } = area;
    const { numbers } = lanes;
    const size = area.rows * area.columns;
    let so = fold.start;
    if (lanes.plain && fold.adds && !fold.map && fold.takes !== 'count' && fold.takes !== 'filled') {
      for (let i = 0; i < size; i++) so += numbers[i]!;
      return { so, count: size };
    }
    let count = 0;
    for (let i = 0; i < size; i++) {
      const what = contribution(fold, lanes, i, true);
      if (what === FAILED) return found.error;
      if (what === NOTHING) continue;
      so = fold.join(so, number);
      count++;
    }
    return { so, count };
  });

/** The numbers of an area behind the n that are in `room`; the new n, −1 for an error. */
function gatherArea(fold: Gathering, area: Area, n: number): number {
  const size = area.rows * area.columns;
  enlarge(n + size);
  let count = n;
  for (let i = 0; i < size; i++) {
    const what = contribution(fold, area.lanes, i, true);
    if (what === FAILED) return -1;
    if (what === NUMBER) room[count++] = number;
  }
  return count;
}

let room = new Float64Array(256);
function enlarge(size: number): void {
  if (room.length >= size) return;
  const larger = new Float64Array(size * 2);
  larger.set(room);
  room = larger;
}

/** The result of an area alone. */
function ofArea(name: string, fold: Fold, area: Area): number | Issue {
  if ('of' in fold)
    return remembered(gathered, fold, area, () => {
      const size = area.rows * area.columns;
      if (area.lanes.plain) return fold.of(area.lanes.numbers, size, name);
      const n = gatherArea(fold, area, 0);
      return n < 0 ? found.error : fold.of(room, n, name);
    });
  const part = partOf(fold, area);
  return 'so' in part ? fold.end(part.so, part.count) : part;
}

const settle = (out: Lanes, i: number, result: number | Issue): void => {
  if (typeof result === 'number') out.setNumber(i, result, Tag.number);
  else out.setError(i, result);
};

/** A call of SUM or one of its kin; undefined when the name is none. */
export function aggregateNode(given: string, args: readonly PlanNode[]): PlanNode | undefined {
  const name = aliases[given] ?? given;
  const fold = folds.get(name);
  if (!fold) return undefined;
  if (args.length === 0) return constantNode(wrongCount);
  const only = args[0]!;
  const fill = (frame: Frame, out: Lanes): void => {
    const lanes = args.map((arg) => (arg.is === 'scalar' ? arg.lanes(frame) : null));
    if ('join' in fold && joinPlain(fold, lanes, frame.count, out)) return;
    out.mixed();
    for (let i = 0; i < frame.count; i++) {
      if (args.length === 1 && only.is === 'area' && only.written === 'reference')
        settle(out, i, ofArea(name, fold, only.area(frame, i)));
      else if ('of' in fold) settle(out, i, gatherRow(name, fold, args, lanes, frame, i));
      else settle(out, i, joinRow(fold, args, lanes, frame, i));
    }
  };
  return args.some((arg) => arg.varies) ? varyingScalar(fill) : fixedScalar(fill);
}

function joinRow(
  fold: Joining,
  args: readonly PlanNode[],
  lanes: readonly (Lanes | null)[],
  frame: Frame,
  i: number,
): number | Issue {
  let so = fold.start;
  let count = 0;
  for (let k = 0; k < args.length; k++) {
    const arg = args[k]!;
    const area = arg.is === 'area' ? arg.area(frame, i) : null;
    // an array of one cell that was computed is that value
    const one = area && arg.written !== 'reference' && area.rows * area.columns === 1;
    if (area && !one) {
      const part = partOf(fold, area);
      if (!('so' in part)) return part;
      so = fold.join(part.so, so);
      count += part.count;
      continue;
    }
    const lane = area ? area.lanes : lanes[k]!;
    const what = contribution(fold, lane, area || lane.single ? 0 : i, arg.written === 'reference');
    if (what === FAILED) return found.error;
    if (what === NOTHING) continue;
    so = fold.join(so, number);
    count++;
  }
  return fold.end(so, count);
}

function gatherRow(
  name: string,
  fold: Gathering,
  args: readonly PlanNode[],
  lanes: readonly (Lanes | null)[],
  frame: Frame,
  i: number,
): number | Issue {
  let n = 0;
  for (let k = 0; k < args.length; k++) {
    const arg = args[k]!;
    const area = arg.is === 'area' ? arg.area(frame, i) : null;
    const one = area && arg.written !== 'reference' && area.rows * area.columns === 1;
    if (area && !one) {
      n = gatherArea(fold, area, n);
      if (n < 0) return found.error;
      continue;
    }
    const lane = area ? area.lanes : lanes[k]!;
    const what = contribution(fold, lane, area || lane.single ? 0 : i, arg.written === 'reference');
    if (what === FAILED) return found.error;
    enlarge(n + 1);
    if (what === NUMBER) room[n++] = number;
  }
  return fold.of(room, n, name);
}

/** Plain numbers side by side, joined a column at a time. */
function joinPlain(fold: Joining, lanes: readonly (Lanes | null)[], n: number, out: Lanes): boolean {
  if (fold.map || fold.takes === 'count' || fold.takes === 'filled') return false;
  if (lanes.some((lane) => !lane?.plain)) return false;
  const { numbers } = out;
  const { join, adds } = fold;
  numbers.fill(fold.start, 0, n);
  for (const lane of lanes) {
    const x = lane!.numbers;
    const s = lane!.single ? 0 : 1;
    if (adds) for (let i = 0; i < n; i++) numbers[i] = numbers[i]! + x[i * s]!;
    else for (let i = 0; i < n; i++) numbers[i] = join(numbers[i]!, x[i * s]!);
  }
  const count = lanes.length;
  for (let i = 0; i < n; i++) {
    const r = fold.end(numbers[i]!, count) as number;
    if (r - r !== 0) return false;
    numbers[i] = r + 0;
  }
  out.allNumbers(n);
  return true;
}
