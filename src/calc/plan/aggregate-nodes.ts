/** Nodes of a plan that compute an aggregate, row by row or once for whole columns. */
import type { Issue } from '../../../functions/core/issue.ts';
import {
  type Aggregate,
  contribution,
  enlarge,
  FAILED,
  type Gathering,
  gatherArea,
  given,
  type Joining,
  NOTHING,
  NUMBER,
  ofArea,
  partOf,
  room,
} from './aggregate.ts';
import { found, readNumber } from './coerce.ts';
import {
  constantNode,
  type Frame,
  fixedScalar,
  type PlanNode,
  type ScalarNode,
  varyingScalar,
} from './plan-nodes.ts';
import { badMode, wrongCount } from './problems.ts';
import { Tag, type Vector } from './vector.ts';

const settle = (out: Vector, i: number, result: number | Issue): void => {
  if (typeof result === 'number') out.setNumber(i, result, Tag.number);
  else out.setError(i, result);
};

/** A call of SUM or one of its kin. */
export function aggregateNode(name: string, aggregate: Aggregate, args: readonly PlanNode[]): ScalarNode {
  if (args.length === 0) return constantNode(wrongCount);
  const only = args[0]!;
  const fill = (frame: Frame, out: Vector): void => {
    const vectors = args.map((arg) => (arg.is === 'scalar' ? arg.vector(frame) : null));
    if ('join' in aggregate && joinPlain(aggregate, vectors, frame.count, out)) return;
    out.mixed();
    for (let i = 0; i < frame.count; i++) {
      if (args.length === 1 && only.is === 'area' && only.written === 'reference')
        settle(out, i, ofArea(name, aggregate, only.area(frame, i)));
      else if ('of' in aggregate) settle(out, i, gatherRow(name, aggregate, args, vectors, frame, i));
      else settle(out, i, joinRow(aggregate, args, vectors, frame, i));
    }
  };
  return args.some((arg) => arg.varies) ? varyingScalar(fill) : fixedScalar(fill);
}

function joinRow(
  aggregate: Joining,
  args: readonly PlanNode[],
  vectors: readonly (Vector | null)[],
  frame: Frame,
  i: number,
): number | Issue {
  let so = aggregate.start;
  let count = 0;
  for (let k = 0; k < args.length; k++) {
    const arg = args[k]!;
    const isReference = arg.written === 'reference';
    const area = arg.is === 'area' ? arg.area(frame, i) : null;
    // a range is computed on its own, a computed array cell by cell; one of one cell is that value
    if (area && isReference) {
      const part = partOf(aggregate, area);
      if (!('so' in part)) return part;
      so = aggregate.join(part.so, so);
      count += part.count;
      continue;
    }
    const vector = area ? area.vector : vectors[k]!;
    const size = area ? area.rows * area.columns : 1;
    for (let j = 0; j < size; j++) {
      const at = area ? j : vector.single ? 0 : i;
      const what = contribution(aggregate, vector, at, isReference || size > 1);
      if (what === FAILED) return found.error;
      if (what === NOTHING) continue;
      so = aggregate.join(so, given.number);
      count++;
    }
  }
  return aggregate.end(so, count);
}

function gatherRow(
  name: string,
  aggregate: Gathering,
  args: readonly PlanNode[],
  vectors: readonly (Vector | null)[],
  frame: Frame,
  i: number,
): number | Issue {
  let n = 0;
  for (let k = 0; k < args.length; k++) {
    const arg = args[k]!;
    const area = arg.is === 'area' ? arg.area(frame, i) : null;
    const one = area && arg.written !== 'reference' && area.rows * area.columns === 1;
    if (area && !one) {
      n = gatherArea(aggregate, area, n);
      if (n < 0) return found.error;
      continue;
    }
    const vector = area ? area.vector : vectors[k]!;
    const what = contribution(aggregate, vector, area || vector.single ? 0 : i, arg.written === 'reference');
    if (what === FAILED) return found.error;
    enlarge(n + 1);
    if (what === NUMBER) room.numbers[n++] = given.number;
  }
  return aggregate.of(room.numbers, n, name);
}

/** Plain numbers side by side, joined a column at a time. */
function joinPlain(aggregate: Joining, vectors: readonly (Vector | null)[], n: number, out: Vector): boolean {
  if (aggregate.map || aggregate.takes === 'count' || aggregate.takes === 'filled') return false;
  if (vectors.some((vector) => !vector?.plain)) return false;
  const { numbers } = out;
  const { join, adds } = aggregate;
  numbers.fill(aggregate.start, 0, n);
  for (const vector of vectors) {
    const x = vector!.numbers;
    const s = vector!.single ? 0 : 1;
    if (adds) for (let i = 0; i < n; i++) numbers[i] = numbers[i]! + x[i * s]!;
    else if (join === Math.max) for (let i = 0; i < n; i++) numbers[i] = Math.max(numbers[i]!, x[i * s]!);
    else if (join === Math.min) for (let i = 0; i < n; i++) numbers[i] = Math.min(numbers[i]!, x[i * s]!);
    else for (let i = 0; i < n; i++) numbers[i] = join(numbers[i]!, x[i * s]!);
  }
  const count = vectors.length;
  for (let i = 0; i < n; i++) {
    const r = aggregate.end(numbers[i]!, count) as number;
    if (r - r !== 0) return false;
    numbers[i] = r + 0;
  }
  out.allNumbers(n);
  return true;
}

/** The aggregate that the first argument asks for by its number, from 1; 101 to 111 ask for the same. */
export function subtotalNode(
  subtotals: readonly (readonly [name: string, aggregate: Aggregate])[],
  [mode, ...args]: readonly PlanNode[],
): ScalarNode {
  if (!mode || args.length === 0) return constantNode(wrongCount);
  if (mode.is === 'area') return constantNode(badMode);
  const nodes = subtotals.map(([name, aggregate]) => aggregateNode(name, aggregate, args));
  const fill = (frame: Frame, out: Vector): void => {
    out.mixed();
    const modes = mode.vector(frame);
    const asked = Array.from({ length: frame.count }, (_, i) => {
      const read = readNumber(modes, modes.single ? 0 : i);
      return read ? (found.value > 100 ? found.value - 100 : found.value) - 1 : -1;
    });
    for (const which of new Set(asked)) {
      const vector = nodes[which]?.vector(frame);
      for (let i = 0; i < frame.count; i++) {
        if (asked[i] !== which) continue;
        if (vector) out.copy(i, vector, vector.single ? 0 : i);
        else out.setError(i, badMode);
      }
    }
  };
  return mode.varies || args.some((arg) => arg.varies) ? varyingScalar(fill) : fixedScalar(fill);
}
