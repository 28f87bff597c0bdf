import type { Issue } from '../../../functions/core/issue.ts';
import { found, readNumber } from './coerce.ts';
import {
  contribution,
  enlarge,
  FAILED,
  foldOf,
  type Gathering,
  gatherArea,
  given,
  type Joining,
  NOTHING,
  NUMBER,
  ofArea,
  partOf,
  room,
} from './folds.ts';
import { type Lanes, Tag } from './lanes.ts';
import {
  constantNode,
  type Frame,
  fixedScalar,
  type PlanNode,
  type ScalarNode,
  varyingScalar,
} from './nodes.ts';
import { badMode, wrongCount } from './problems.ts';

const settle = (out: Lanes, i: number, result: number | Issue): void => {
  if (typeof result === 'number') out.setNumber(i, result, Tag.number);
  else out.setError(i, result);
};

/** A call of SUM or one of its kin; undefined when the name is none. */
export function aggregateNode(name: string, args: readonly PlanNode[]): ScalarNode | undefined {
  if (name === 'SUBTOTAL') return subtotalNode(args);
  const fold = foldOf(name);
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
    const isReference = arg.written === 'reference';
    const area = arg.is === 'area' ? arg.area(frame, i) : null;
    // a range is folded on its own, a computed array cell by cell; one of one cell is that value
    if (area && isReference) {
      const part = partOf(fold, area);
      if (!('so' in part)) return part;
      so = fold.join(part.so, so);
      count += part.count;
      continue;
    }
    const lane = area ? area.lanes : lanes[k]!;
    const size = area ? area.rows * area.columns : 1;
    for (let j = 0; j < size; j++) {
      const at = area ? j : lane.single ? 0 : i;
      const what = contribution(fold, lane, at, isReference || size > 1);
      if (what === FAILED) return found.error;
      if (what === NOTHING) continue;
      so = fold.join(so, given.number);
      count++;
    }
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
    if (what === NUMBER) room.numbers[n++] = given.number;
  }
  return fold.of(room.numbers, n, name);
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
    else if (join === Math.max) for (let i = 0; i < n; i++) numbers[i] = Math.max(numbers[i]!, x[i * s]!);
    else if (join === Math.min) for (let i = 0; i < n; i++) numbers[i] = Math.min(numbers[i]!, x[i * s]!);
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

/** What the first argument of SUBTOTAL asks for, from 1; 101 to 111 ask for the same. */
const subtotals = [
  ...['AVERAGE', 'COUNT', 'COUNTA', 'MAX', 'MIN', 'PRODUCT'],
  ...['STDEV.S', 'STDEV.P', 'SUM', 'VAR.S', 'VAR.P'],
];

/** SUBTOTAL: the fold that its first argument names. */
function subtotalNode([mode, ...args]: readonly PlanNode[]): ScalarNode {
  if (!mode || args.length === 0) return constantNode(wrongCount);
  if (mode.is === 'area') return constantNode(badMode);
  const nodes = subtotals.map((name) => aggregateNode(name, args)!);
  const fill = (frame: Frame, out: Lanes): void => {
    out.mixed();
    const modes = mode.lanes(frame);
    const asked = Array.from({ length: frame.count }, (_, i) => {
      const read = readNumber(modes, modes.single ? 0 : i);
      return read ? (found.value > 100 ? found.value - 100 : found.value) - 1 : -1;
    });
    for (const which of new Set(asked)) {
      const lanes = nodes[which]?.lanes(frame);
      for (let i = 0; i < frame.count; i++) {
        if (asked[i] !== which) continue;
        if (lanes) out.copy(i, lanes, lanes.single ? 0 : i);
        else out.setError(i, badMode);
      }
    }
  };
  return mode.varies || args.some((arg) => arg.varies) ? varyingScalar(fill) : fixedScalar(fill);
}
