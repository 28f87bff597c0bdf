import type { Bound, Node } from '../ast.ts';

/** The parts of a node, left to right. */
export function childrenOf<N extends Node | Bound>(node: N): readonly N[] {
  switch (node.type) {
    case 'unary':
    case 'percent':
      return [node.operand as N];
    case 'binary':
      return [node.left as N, node.right as N];
    case 'call':
      return node.args as readonly N[];
    case 'array':
      return node.rows.flat() as N[];
    default:
      return [];
  }
}

/** Visits a tree, parents first; `visit` answers false to leave a branch out. */
export function walk<N extends Node | Bound>(node: N, visit: (node: N) => boolean | undefined): void {
  if (visit(node) === false) return;
  for (const child of childrenOf(node)) walk(child, visit);
}
