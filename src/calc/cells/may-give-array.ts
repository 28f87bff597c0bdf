import { registry } from '../../../functions/registry.ts';
import type { Bound, CallNode } from '../ast.ts';
import { builtIns } from '../builtins/index.ts';
import { cellEngine } from '../cell-engine/engine.ts';
import { childrenOf } from '../language/walk.ts';
import { parametersOf, takesRange } from '../plan/arguments.ts';

/** Whether a formula can give more than one cell, by what it is made of. In doubt it can. */
export function mayGiveArray(bound: Bound): boolean {
  switch (bound.type) {
    case 'array':
    case 'column-of':
    case 'cells-of':
    case 'local':
      return true;
    case 'call':
      return callMay(bound);
    default:
      return childrenOf(bound).some(mayGiveArray);
  }
}

function callMay({ name, args }: CallNode<Bound>): boolean {
  if (!registry.has(name)) {
    const { aggregate, own, ranges } = builtIns.get(name)?.implementation ?? {};
    if (aggregate) return false;
    if (own?.size) return true;
    const body = cellEngine().body(name);
    if (body?.metadata.sizeOfResultArrayMethod !== undefined) return true;
    const parameters = body && ranges && parametersOf(body, args.length);
    if (parameters) return args.some((arg, k) => !takesRange(parameters[k]) && mayGiveArray(arg));
  }
  return args.some(mayGiveArray);
}
