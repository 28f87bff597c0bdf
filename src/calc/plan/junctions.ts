import type { Issue } from '../../../functions/core/issue.ts';
import { truthOf } from './coerce.ts';
import { elementwise } from './elementwise.ts';
import type { Kernel } from './operators.ts';
import {
  type Area,
  type AreaNode,
  constantNode,
  fixedScalar,
  type PlanNode,
  type ScalarNode,
  varyingScalar,
} from './plan-nodes.ts';
import { wrongCount, wrongType } from './problems.ts';
import { singleVector, Tag, Vector } from './vector.ts';

/** AND, OR, XOR of single values: every argument is read, so an error in any of them is the result. */
function junction(start: number, join: (so: number, next: number) => number): Kernel {
  return (args, n, out) => {
    if (args.every((a) => a.plain || a.decided)) {
      for (let i = 0; i < n; i++) {
        let so = start;
        for (const a of args) so = join(so, a.numbers[a.single ? 0 : i] !== 0 ? 1 : 0);
        out.numbers[i] = so;
      }
      out.all(Tag.yesNo, n);
      return;
    }
    out.mixed();
    for (let i = 0; i < n; i++) {
      let so = start;
      let wrong: Issue | undefined;
      for (const a of args) {
        const at = a.single ? 0 : i;
        const truth = truthOf(a, at);
        if (truth < 0) {
          wrong = truth === -1 ? wrongType : a.errorAt(at);
          break;
        }
        so = join(so, truth);
      }
      if (wrong) out.setError(i, wrong);
      else out.setYesNo(i, so === 1);
    }
  };
}

/** A way to join conditions, and the condition that changes nothing in it. */
export interface Junction {
  readonly kernel: Kernel;
  readonly neutral: boolean;
}
export const junctions = {
  and: { kernel: junction(1, (so, next) => so & next), neutral: true },
  or: { kernel: junction(0, (so, next) => so | next), neutral: false },
  xor: { kernel: junction(0, (so, next) => so ^ next), neutral: false },
} as const;

/** AND, OR or XOR; the cells of ranges count as arguments, those that are no condition are passed over. */
export function junctionNode({ kernel, neutral }: Junction, args: readonly PlanNode[]): PlanNode {
  if (args.length === 0) return constantNode(wrongCount);
  return elementwise(
    kernel,
    args.map((arg) => (arg.is === 'scalar' ? arg : joinedArea(kernel, neutral, arg))),
  );
}

/** All conditions of an area as one. */
function joinedArea(kernel: Kernel, neutral: boolean, node: AreaNode): ScalarNode {
  const neutralVector = singleVector(neutral);
  const join = (area: Area, out: Vector, i: number): void => {
    const so = new Vector(1);
    so.copy(0, neutralVector, 0);
    so.single = true;
    const one = new Vector(1);
    one.single = true;
    for (let k = 0; k < area.rows * area.columns; k++) {
      if (area.rows * area.columns > 1 && truthOf(area.vector, k) === -1) continue;
      one.copy(0, area.vector, k);
      kernel([so, one], 1, so);
      if (so.tags[0] === Tag.error) break;
    }
    out.copy(i, so, 0);
  };
  if (!node.varies) return fixedScalar((frame, out) => join(node.area(frame, 0), out, 0));
  return varyingScalar((frame, out) => {
    out.mixed();
    for (let i = 0; i < frame.count; i++) join(node.area(frame, i), out, i);
  });
}
