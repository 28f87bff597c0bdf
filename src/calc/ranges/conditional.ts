/** SUMIFS and its kin: aggregates of the cells that meet conditions. */
import { CellError, ErrorType } from 'hyperformula';
import { Kind, type Range } from '../../../functions/core/value.ts';
import type { Criterion } from '../cell-engine/engine.ts';
import type { Inner } from '../cell-engine/values.ts';
import { criterionOf, groupsOf, meeting, testOf, worthGrouping } from './criteria.ts';
import {
  type Answer,
  always,
  averaging,
  counting,
  type Gather,
  largest,
  smallest,
  summing,
} from './gather.ts';

const badCriterion = new CellError(ErrorType.VALUE, 'Incorrect criterion.');
const unequal = new CellError(ErrorType.VALUE, 'Ranges need to be of equal length.');

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

/** Aggregates the values whose cells meet all conditions; `pairs` are ranges and criteria in turn. */
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
    if (by < 0) answer = how.aggregate(values, null, 0, values.rows * values.columns, allHold(others));
    else if (group < 0) answer = how.aggregate(values, null, 0, 0, always);
    else {
      const { of, count, starts, cells } = groupsOf(conditions[by]!.range);
      if (memory.asked > 1 && !holdsErrors(values)) {
        const met = others.length === 0 ? null : cellsThatMeet(others);
        how.all(values, of, count, met).forEach((result, g) => {
          memory.byGroup[g + 1] = result;
        });
        return memory.byGroup[slot]!;
      }
      answer = how.aggregate(values, cells, starts[group]!, starts[group + 1]!, allHold(others));
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
  sumIf: single(summing),
  countIf: single(counting),
  averageIf: single(averaging),
  sumIfs: several(summing),
  countIfs: (...pairs: readonly (Range | Inner)[]): Answer => gather(counting, pairs[0] as Range, pairs),
  averageIfs: several(averaging),
  minIfs: several(smallest),
  maxIfs: several(largest),
} as const;
